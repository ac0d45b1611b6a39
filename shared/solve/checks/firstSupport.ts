import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { movingBodyAt } from './engineSlack.ts';
import { judge } from './judge.ts';
import { mouthPlace, SIDES, sideText } from './places.ts';

/**
 * How far along the hose its first clamp or pass-through is from an end on a body that moves on its mounts, whatever that support is fixed
 * to: a note, since the handbook's figure is "about", and the extremes of the motion say what it does. A hose without supports is
 * `clampSpacing`'s.
 */
export function firstSupport(context: CheckContext): Finding[] {
  const { project, run, lay } = context;
  const held = lay.supports.filter(({ kind }) => kind !== 'waypoint').map(({ at }) => at);
  const use = ruleValue(project, 'engine-first-support', run.run.id);
  return SIDES.flatMap((side) => {
    const first = side === 'a' ? held[0] : held.at(-1);
    if (first === undefined || movingBodyAt(context, side) === undefined) return [];
    const measured = Math.abs(first.arcLengthMm - mouthPlace(lay, side).arcLengthMm);
    return judge({
      check: 'firstSupport',
      run: run.run.id,
      use,
      sense: 'at-most',
      measured,
      unit: 'mm',
      severity: 'note',
      at: first,
      message: `From ${sideText(side)}, which moves with its mounts, to the first support of the hose there are ${lengthText(measured)}; about ${lengthText(use.value)} is asked for.`,
      mend: `A clamp that near to ${sideText(side)}, on what it moves with; and hose to spare from there to what stands.`,
    });
  });
}
