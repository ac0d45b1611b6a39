import type { Clearance, Finding } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { bundleLimit } from './clearance.ts';
import { type Comparison, judge } from './judge.ts';
import { placeText } from './places.ts';
import { skinOfClearance, thingText } from './skins.ts';

/**
 * Bare steel braid within reach of a composite part or of another hose: it cuts what it rubs. Looked at within reach,
 * and no cutting where it touches the composite. A sleeve or another cover ends it.
 */
export function chafe(context: CheckContext): Finding[] {
  const { run, lay, project } = context;
  if (run.hose.cover !== 'steel-braid' || run.sleeve !== undefined) return [];
  return lay.clearances.flatMap((c) => {
    if (c.to.kind === 'run') return onHose(context, c);
    return skinOfClearance(project, c)?.kind === 'composite' ? onComposite(context, c) : [];
  });
}

function onComposite(context: CheckContext, c: Clearance): Finding[] {
  const { project, run } = context;
  const use = ruleValue(project, 'chafe-reach', run.run.id);
  return judge({
    ...rub(context, c),
    use,
    limit: use.value + project.bay.scanUncertaintyMm,
    ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
    severity: c.provenAtLeastMm <= project.bay.scanUncertaintyMm ? 'stop' : 'look',
    mend: 'A sleeve, a stand-off clamp, or the same hose with polyester braid.',
  });
}

function onHose(context: CheckContext, c: Clearance): Finding[] {
  const { project, run } = context;
  const required = requiredRunClearance(project, run.run.id, c.to.id);
  const { use, requiredMm } = required;
  const bundle = bundleOf(project, run.run.id, c.to.id);
  return judge({
    ...rub(context, c),
    use,
    limit: requiredMm,
    ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
    severity: 'look',
    ...(bundle === undefined ? {} : bundleLimit(required, bundle)),
    mend: 'Clamp the two together with a separator, or a sleeve on one of them, or the same hose with polyester braid.',
  });
}

function rub(
  { project, run }: CheckContext,
  c: Clearance,
): Pick<Comparison, 'check' | 'run' | 'sense' | 'measured' | 'unit' | 'at' | 'with' | 'message'> {
  return {
    check: 'chafe',
    run: run.run.id,
    sense: 'at-least',
    measured: c.provenAtLeastMm,
    unit: 'mm',
    at: c.at,
    with: c.to,
    message: `Bare steel braid ${lengthText(c.provenAtLeastMm)} from ${thingText(project, c)}, ${placeText(c.at)}: within reach it saws.`,
  };
}
