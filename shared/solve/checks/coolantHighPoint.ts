import type { Finding, Lay } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText, sideText } from './places.ts';
import { type Knot, seatToSeat } from './profile.ts';

/**
 * The hump of a coolant hose that holds most air: a crest, in the hose or in one of its ends, from which it goes down
 * both ways before it comes higher again or reaches a seat. Measured by the lesser of the two falls, mm, +Z up. A crest
 * at a seat is the port's affair, not the hose's.
 */
export function coolantHighPoint({ project, run, lay }: CheckContext): Finding[] {
  const { purpose, fluid } = run.run.service;
  if (fluid !== 'coolant' && purpose !== 'coolant' && purpose !== 'turbo-water') return [];
  const hump = deepestHump(lay);
  if (hump === undefined) return [];
  const use = ruleValue(project, 'coolant-high-point', run.run.id);
  const at = hump.knot.place;
  const where = hump.knot.inEnd === undefined ? placeText(at) : `inside ${sideText(hump.knot.inEnd)}`;
  return judge({
    check: 'coolantHighPoint',
    run: run.run.id,
    use,
    sense: 'at-most',
    limit: use.value,
    ruleLimit: use.rule.value,
    measured: hump.depthMm,
    unit: 'mm',
    severity: 'look',
    at,
    message: `Humps ${lengthText(hump.depthMm)} high ${where}: air stays there.`,
    mend: 'Lower it there, or put a bleed at the crest; the highest point of the system must be the cap or a bleed.',
  });
}

interface Hump {
  readonly knot: Knot;
  readonly depthMm: number;
}

function deepestHump(lay: Lay): Hump | undefined {
  const knots = seatToSeat(lay);
  const heights = knots.map((k) => k.point[2]);
  let deepest: Hump | undefined;
  for (let i = 1; i < heights.length - 1; i++) {
    const here = heights[i] ?? 0;
    if ((heights[i - 1] ?? 0) > here || (heights[i + 1] ?? 0) > here) continue;
    const knot = knots[i];
    const depthMm = Math.min(fallAway(heights, i, -1), fallAway(heights, i, 1));
    if (knot !== undefined && depthMm > (deepest?.depthMm ?? 0)) deepest = { knot, depthMm };
  }
  return deepest;
}

/** How far the profile falls from a crest, one way, before it comes higher than the crest or ends. */
function fallAway(heights: readonly number[], crest: number, step: 1 | -1): number {
  const top = heights[crest] ?? 0;
  let lowest = top;
  for (let i = crest + step; i >= 0 && i < heights.length; i += step) {
    const here = heights[i] ?? top;
    if (here > top) break;
    lowest = Math.min(lowest, here);
  }
  return top - lowest;
}
