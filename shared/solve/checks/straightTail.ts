import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, SIDES, sideText } from './places.ts';

/** Straight hose beyond each mouth, mm, against the rule in diameters of the bare hose. */
export function straightTail({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'straight-tail', run.run.id);
  const diameterMm = run.hose.outsideDiameterMm;
  const limit = use.value * diameterMm;
  return SIDES.flatMap((side) =>
    judge({
      check: 'straightTail',
      run: run.run.id,
      use,
      sense: 'at-least',
      limit,
      ruleLimit: use.rule.value * diameterMm,
      measured: lay.straightTailMm[side],
      unit: 'mm',
      severity: 'look',
      at: mouthPlace(lay, side),
      message: `Only ${lengthText(lay.straightTailMm[side])} of straight hose at ${sideText(side)}; ${use.value} hose diameters are ${lengthText(limit)}.`,
      mend: 'An angled end, or an end of another angle, lets the hose leave the way it has to go.',
    }),
  );
}
