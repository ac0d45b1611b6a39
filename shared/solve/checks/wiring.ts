import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { carriesFlammable, requiredSkinClearance } from '../../document/rules/requiredClearance.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';
import { skinOfClearance, thingText } from './skins.ts';

/**
 * Wiring near a hose with oil or fuel, nearer than it is wished to be and further than `clearance` forbids: a note, since six
 * inches are not to be had in most bays.
 */
export function wiring({ project, run, lay }: CheckContext): Finding[] {
  if (!carriesFlammable(project, run.run.id)) return [];
  const use = ruleValue(project, 'wiring-preferred', run.run.id);
  const limit = use.value + project.bay.scanUncertaintyMm;
  return lay.clearances.flatMap((c) => {
    const skin = skinOfClearance(project, c);
    if (skin?.kind !== 'wiring') return [];
    // Nearer than the least, `clearance` speaks of it.
    if (c.provenAtLeastMm < requiredSkinClearance(project, run.run.id, skin).requiredMm) return [];
    return judge({
      check: 'wiring',
      run: run.run.id,
      use,
      sense: 'at-least',
      limit,
      ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
      measured: c.provenAtLeastMm,
      unit: 'mm',
      severity: 'note',
      at: c.at,
      with: c.to,
      message: `${lengthText(c.provenAtLeastMm)} from ${thingText(project, c)}, ${placeText(c.at)}: wiring is kept ${lengthText(limit)} from oil and fuel where it can be, and above it.`,
      mend: 'Clamp hose and loom each by itself, so that neither can reach the other; never tie one to the other.',
    });
  });
}
