import type { Finding, Lay } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { deepestHump } from '../../geometry/deepestHump.ts';
import { holdsNoAir } from '../character/characterOf.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText, sideText } from './places.ts';
import { type Knot, seatToSeat } from './profile.ts';

/**
 * The hump of a coolant hose that holds most air: a crest, in the hose or in one of its ends, from which it goes down
 * both ways before it comes higher again or reaches a seat. Measured by the lesser of the two falls, mm, +Z up. A crest
 * at a seat is the port's affair, not the hose's. Where a bleed is stated it is a note of where that belongs.
 */
export function coolantHighPoint({ project, run, lay }: CheckContext): Finding[] {
  if (!holdsNoAir(run.run.service)) return [];
  const hump = humpOf(lay);
  if (hump === undefined) return [];
  const use = ruleValue(project, 'coolant-high-point', run.run.id);
  const at = hump.knot.place;
  const isBled = run.run.bledAtCrest === true;
  const sought = lay.givenUp?.some((g) => g.wish === 'no-crest')
    ? ' No hose between these ends without one was found.'
    : '';
  const where = hump.knot.inEnd === undefined ? placeText(at) : `inside ${sideText(hump.knot.inEnd)}`;
  return judge({
    check: 'coolantHighPoint',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: hump.depthMm,
    unit: 'mm',
    severity: isBled ? 'note' : 'look',
    at,
    message: `Humps ${lengthText(hump.depthMm)} high ${where}: ${isBled ? 'the bleed that is stated belongs there.' : `air stays there.${sought}`}`,
    mend: isBled
      ? 'Fit the bleed at the crest, not beside it.'
      : 'Lower it there, or put a bleed at the crest and say so of the run; the highest point of the system must be the cap or a bleed.',
  });
}

interface CoolantHump {
  readonly knot: Knot;
  readonly depthMm: number;
}

function humpOf(lay: Lay): CoolantHump | undefined {
  const knots = seatToSeat(lay);
  const hump = deepestHump(knots.map((k) => k.point[2]));
  return hump && { knot: knots[hump.at] as Knot, depthMm: hump.depth };
}
