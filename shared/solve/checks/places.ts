import { distance } from '../../base/vec3.ts';
import type { Lay, Place } from '../../document/lay/schema.ts';
import { lengthText } from '../../document/wording/quantityText.ts';

/** One end of a hose. */
export type Side = 'a' | 'b';
export const SIDES: readonly Side[] = ['a', 'b'];

/** What papers and tags call an end. */
export function sideText(side: Side): string {
  return side === 'a' ? 'END A' : 'END B';
}

/** A place in a sentence: `212.0 mm (8.35 in) from shoulder A`. */
export function placeText(place: Place): string {
  return `${lengthText(place.arcLengthMm)} from shoulder A`;
}

/** A point at or in an end, told at that end's shoulder, which is as far as the hose goes. */
export function endPlace(lay: Lay, side: Side, point: Place['point']): Place {
  return { arcLengthMm: side === 'a' ? 0 : lay.cutLengthMm, point };
}

/** Where the hose leaves the socket or collar of an end. */
export function mouthPlace(lay: Lay, side: Side): Place {
  const end = lay.ends[side];
  const inside = distance(end.shoulderPoint, end.mouthPoint);
  return { arcLengthMm: side === 'a' ? inside : lay.cutLengthMm - inside, point: end.mouthPoint };
}

/** Number of the place nearest to an arc length, mm, among places told by theirs. */
export function nearestIndex(arcLengthMm: readonly number[], atMm: number): number {
  const off = (i: number): number => Math.abs((arcLengthMm[i] as number) - atMm);
  return arcLengthMm.reduce((best, _, i) => (off(i) < off(best) ? i : best), 0);
}

/** The place on the centreline at an arc length from shoulder A, between its stored points. The lay has a path. */
export function placeAt(lay: Lay, arcLengthMm: number): Place {
  const { points, arcLengthMm: lengths } = lay.centreline;
  const after = lengths.findIndex((s) => s >= arcLengthMm);
  const i = Math.max(1, after < 0 ? lengths.length - 1 : after);
  const [from, to] = [points[i - 1], points[i]];
  const [low, high] = [lengths[i - 1], lengths[i]];
  if (from === undefined || to === undefined || low === undefined || high === undefined)
    return { arcLengthMm, point: points[0] ?? [0, 0, 0] };
  const t = high > low ? (arcLengthMm - low) / (high - low) : 0;
  const between = (axis: 0 | 1 | 2): number => from[axis] + (to[axis] - from[axis]) * t;
  return { arcLengthMm, point: [between(0), between(1), between(2)] };
}
