import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import { tightestBetween } from '../character/bendsBetween.ts';
import { calmStretch } from '../character/brokenBy.ts';
import { calmLimits, pumpSide } from '../character/characterOf.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, placeText, sideText } from './places.ts';

/**
 * A suction hose next to its pump (where the fluid goes to): the least centreline radius, mm, over the first bores of hose
 * from that mouth, read from the report's centreline; and the angle of the end itself.
 */
export function suctionBend(context: CheckContext): Finding[] {
  const side = pumpSide(context.run);
  return side === undefined ? [] : [...hoseBend(context, side), ...endBend(context, side)];
}

function hoseBend({ project, run, lay }: CheckContext, side: 'a' | 'b'): Finding[] {
  const use = ruleValue(project, 'suction-calm-radius', run.run.id);
  const { lengthMm, radiusMm } = calmLimits(project, run);
  const mouthsMm = { a: mouthPlace(lay, 'a').arcLengthMm, b: mouthPlace(lay, 'b').arcLengthMm };
  const { from, to } = calmStretch(side, lengthMm, mouthsMm);
  const bend = tightestBetween(lay.centreline.points, lay.centreline.arcLengthMm, from, to);
  const at = { arcLengthMm: bend.arcLengthMm, point: [...bend.point] as [number, number, number] };
  const sought = lay.givenUp?.some((g) => g.wish === 'calm-suction') ? ' No hose that does not was found.' : '';
  return judge({
    check: 'suctionBend',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: radiusMm,
    ruleLimit: (radiusMm / use.value) * use.rule.value,
    measured: bend.radiusMm,
    unit: 'mm',
    severity: 'look',
    at,
    message: `Bends to ${lengthText(bend.radiusMm)} ${placeText(at)}, within ${lengthText(lengthMm)} of the pump at ${sideText(side)}; ${lengthText(radiusMm)} is asked for there.${sought}`,
    mend: 'Turn the bend away from the pump: another end there, a clamp that holds the last stretch straight, or a larger hose.',
  });
}

function endBend({ project, run, lay }: CheckContext, side: 'a' | 'b'): Finding[] {
  const use = ruleValue(project, 'suction-end-angle', run.run.id);
  const { bendAngleDeg } = run[side].end;
  return judge({
    check: 'suctionBend',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: bendAngleDeg,
    unit: 'deg',
    severity: 'look',
    at: mouthPlace(lay, side),
    message: `${sideText(side)}, at the pump, turns the flow by ${degreesText(bendAngleDeg)} in a short bend; up to ${degreesText(use.value)} is let pass.`,
    mend: 'A straighter end at the pump, the hose led to it in one line.',
  });
}
