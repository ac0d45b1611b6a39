import { add, cross, distance, dot, length, lerp, scale, sub, unit, type Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';

type Centreline = Lay['centreline'];

/** Number of the centreline point at or just before an arc length, so that the next point is at or after it. */
function segmentAt(arcs: readonly number[], arcLengthMm: number): number {
  let low = 0;
  let high = Math.max(0, arcs.length - 2);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((arcs[middle] as number) <= arcLengthMm) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * The point of the centreline at an arc length from shoulder A (clamped to the hose), and its direction from A to B: on the
 * cubic through the points on either side with the directions that the points beyond them give there, so that a place
 * between two points lies on the bend and not on its chord.
 */
export function placeAt(line: Centreline, arcLengthMm: number): { point: Vec3; along: Vec3 } | null {
  const { points, arcLengthMm: arcs } = line;
  if (points.length < 2) return null;
  const i = segmentAt(arcs, arcLengthMm);
  const [a, b] = [points[i] as Vec3, points[i + 1] as Vec3];
  const [s, t] = [arcs[i] as number, arcs[i + 1] as number];
  const u = t > s ? Math.min(1, Math.max(0, (arcLengthMm - s) / (t - s))) : 0;
  const [from, to] = [directionAt(line, i), directionAt(line, i + 1)];
  const [out, into] = [scale(from, (t - s) * u * (1 - u) ** 2), scale(to, (t - s) * u * u * (u - 1))];
  const point = add(lerp(a, b, u * u * (3 - 2 * u)), add(out, into));
  return { point, along: unit(lerp(from, to, u)) };
}

/** Direction of the centreline at one of its points: of the parabola through it and its neighbours; at an end, of the last piece. */
function directionAt({ points, arcLengthMm: arcs }: Centreline, i: number): Vec3 {
  const slope = (k: number): Vec3 => unit(sub(points[k + 1] as Vec3, points[k] as Vec3));
  if (i === 0) return slope(0);
  if (i === points.length - 1) return slope(i - 1);
  const before = (arcs[i] as number) - (arcs[i - 1] as number);
  const after = (arcs[i + 1] as number) - (arcs[i] as number);
  return unit(lerp(slope(i - 1), slope(i), before / (before + after)));
}

/** Arc length of the place on the centreline that is nearest to a place in the bay; 0 where there is no line. */
export function nearestArc({ points, arcLengthMm }: Centreline, place: Vec3): number {
  let best = 0;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i] as Vec3, points[i + 1] as Vec3];
    const along = sub(b, a);
    const square = dot(along, along);
    const share = square > 0 ? Math.min(1, Math.max(0, dot(sub(place, a), along) / square)) : 0;
    const d = distance(lerp(a, b, share), place);
    if (d >= bestDistance) continue;
    bestDistance = d;
    const [s, t] = [arcLengthMm[i] as number, arcLengthMm[i + 1] as number];
    best = s + (t - s) * share;
  }
  return best;
}

/** One value of a track along the hose. */
export interface TrackPoint {
  readonly arcLengthMm: number;
  readonly value: number;
}

/**
 * Centreline radius along the hose, mm, for drawing: the circle through each point and the points nearest to `halfSpanMm`
 * before and after it (wide enough that rounded coordinates do not make ripples). Straight hose gives infinity, and so do
 * the last millimetres at either end, where the ends hold the hose straight. The verdict on the radius is the lay's own
 * proven one, not this picture of it.
 */
export function radiusTrack(line: Centreline, halfSpanMm = 10): readonly TrackPoint[] {
  const { points, arcLengthMm: arcs } = line;
  const total = arcs.at(-1) ?? 0;
  return points.map((point, i) => {
    const arc = arcs[i] as number;
    if (arc < halfSpanMm || arc > total - halfSpanMm) return { arcLengthMm: arc, value: Number.POSITIVE_INFINITY };
    const before = Math.min(segmentAt(arcs, arc - halfSpanMm), i - 1);
    const after = Math.max(segmentAt(arcs, arc + halfSpanMm) + 1, i + 1);
    return { arcLengthMm: arc, value: circleRadius(points[before] as Vec3, point, points[after] as Vec3) };
  });
}

/** Radius of the circle through three points; infinity when they are in line. Menger: product of sides over 4 areas. */
function circleRadius(a: Vec3, b: Vec3, c: Vec3): number {
  const doubleArea = length(cross(sub(b, a), sub(c, a)));
  const sides = distance(a, b) * distance(b, c) * distance(c, a);
  return doubleArea > 0 ? sides / (2 * doubleArea) : Number.POSITIVE_INFINITY;
}

/** Height above the lowest point of the hose along it, mm. */
export function heightTrack(line: Centreline): readonly TrackPoint[] {
  const lowest = line.points.reduce((low, point) => Math.min(low, point[2]), Number.POSITIVE_INFINITY);
  return line.points.map((point, i) => ({ arcLengthMm: line.arcLengthMm[i] as number, value: point[2] - lowest }));
}
