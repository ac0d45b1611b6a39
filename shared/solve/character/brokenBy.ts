import { lengthOf, lerp, triple, type Vec3 } from '../../base/vec3.ts';
import type { Place, Wish } from '../../document/lay/schema.ts';
import { deepestHump } from '../../geometry/deepestHump.ts';
import { tightestBetween } from './bendsBetween.ts';
import type { CalmLimit, Character, CrestLimit, PlaneLimit } from './character.ts';
import { planeThrough } from './planeThrough.ts';

/** A hose's shape as its character is read from it: the report's centreline, and what stands at its ends. mm, bay frame. */
export interface ShapeLine {
  readonly points: readonly Vec3[];
  /** from shoulder A */
  readonly arcLengthMm: readonly number[];
  readonly a: EndPoints;
  readonly b: EndPoints;
  /** arc lengths of both mouths */
  readonly mouthsMm: { readonly a: number; readonly b: number };
  /** clamps and pass-throughs in order; proposed = asked for by the program */
  readonly holds: readonly { readonly id: string; readonly atMm: number; readonly proposed: boolean }[];
}

export interface EndPoints {
  /** from the end's seat up to its shoulder and without it */
  readonly way: readonly Vec3[];
}

/** A thing asked that a shape does not keep. */
export interface Broken {
  readonly wish: Wish;
  /** how badly, in mm of clearance missing that would count the same */
  readonly missingMm: number;
  /** the value measured, in the unit of its limit: deg of fall, mm of hump, mm of radius, mm off the plane */
  readonly measured: number;
  readonly at: Place;
  /** where a clamp would help, mm from shoulder A */
  readonly clampAtMm: number;
  /** for one-plane: where the stretch begins */
  readonly from?: string;
}

/** What a place that falls too little counts for, in mm of clearance missing, per unit of slope missing. */
const CLIMB_WEIGHT_MM = 100;

/**
 * Everything of its character that a shape breaks. minRadiusMm turns a share of radius missing into mm. Read from the same
 * points that the report gives, so that a check of the report says the same.
 */
export function brokenBy(character: Character, line: ShapeLine, minRadiusMm: number): Broken[] {
  const { fall, crest, calm, planes } = character;
  return [
    ...(fall === undefined ? [] : climbs(fall, line)),
    ...(crest === undefined ? [] : humps(crest, line)),
    ...(calm === undefined ? [] : bendsTight(calm, line, minRadiusMm)),
    ...planes.flatMap((plane) => leavesPlane(plane, line)),
  ];
}

/** The worst place of the hose, chord by chord, where it falls less than it must. */
function climbs({ down, leastSin }: NonNullable<Character['fall']>, line: ShapeLine): Broken[] {
  let worst = { i: -1, sin: leastSin };
  for (let i = 0; i + 1 < line.points.length; i++) {
    const [p, q] = [line.points[i] as Vec3, line.points[i + 1] as Vec3];
    const d: Vec3 = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
    const sin = (d[0] * down[0] + d[1] * down[1] + d[2] * down[2]) / lengthOf(d[0], d[1], d[2]);
    if (sin < worst.sin) worst = { i, sin };
  }
  if (worst.i < 0) return [];
  const missingMm = (leastSin - worst.sin) * CLIMB_WEIGHT_MM;
  return [broken(line, 'fall', worst.i, missingMm, (Math.asin(Math.max(-1, worst.sin)) * 180) / Math.PI)];
}

/** Heights from seat to seat: ends and hose, as fluid goes. */
export function seatToSeatHeights({ points, a, b }: Pick<ShapeLine, 'points' | 'a' | 'b'>): number[] {
  return [...a.way, ...points, ...b.way.toReversed()].map((p) => p[2]);
}

function humps({ mostMm }: CrestLimit, line: ShapeLine): Broken[] {
  const hump = deepestHump(seatToSeatHeights(line));
  if (hump === undefined || hump.depth <= mostMm) return [];
  const i = Math.min(line.points.length - 1, Math.max(0, hump.at - line.a.way.length));
  return [broken(line, 'no-crest', i, hump.depth - mostMm, hump.depth)];
}

function bendsTight({ side, lengthMm, radiusMm }: CalmLimit, line: ShapeLine, minRadiusMm: number): Broken[] {
  const { from, to } = calmStretch(side, lengthMm, line.mouthsMm);
  const bend = tightestBetween(line.points, line.arcLengthMm, from, to);
  if (bend.radiusMm >= radiusMm) return [];
  const at = { arcLengthMm: bend.arcLengthMm, point: triple(bend.point) };
  const missingMm = (1 - bend.radiusMm / radiusMm) * minRadiusMm;
  // A clamp at the far end of the calm stretch takes the turning up beyond it.
  return [{ wish: 'calm-suction', missingMm, measured: bend.radiusMm, at, clampAtMm: side === 'a' ? to : from }];
}

/** The stretch of hose before a pump by its arc lengths from shoulder A, mm. */
export function calmStretch(
  side: 'a' | 'b',
  lengthMm: number,
  mouthsMm: ShapeLine['mouthsMm'],
): { from: number; to: number } {
  return side === 'a'
    ? { from: mouthsMm.a, to: Math.min(mouthsMm.b, mouthsMm.a + lengthMm) }
    : { from: Math.max(mouthsMm.a, mouthsMm.b - lengthMm), to: mouthsMm.b };
}

function leavesPlane({ from, mostMm }: PlaneLimit, line: ShapeLine): Broken[] {
  return planePieces(from, line).flatMap((piece) => {
    const points = pointsBetween(line, piece.from, piece.to);
    const { offMm } = planeThrough(points);
    if (offMm <= mostMm) return [];
    const split = planeChange(points);
    const clampAtMm = piece.from + ((piece.to - piece.from) * split) / (points.length - 1);
    const at = { arcLengthMm: clampAtMm, point: triple(points[split] as Vec3) };
    return [{ wish: 'one-plane' as const, missingMm: offMm - mostMm, measured: offMm, at, clampAtMm, from }];
  });
}

/**
 * The pieces of an asked stretch between all that holds the hose, proposed clamps included, by arc length, mm: a clamp is
 * where a hose may change its plane.
 */
export function planePieces(
  from: string,
  { holds, arcLengthMm }: Pick<ShapeLine, 'holds' | 'arcLengthMm'>,
): { from: number; to: number }[] {
  const total = arcLengthMm.at(-1) ?? 0;
  const begin = from === 'a' ? 0 : holds.find((h) => h.id === from)?.atMm;
  if (begin === undefined) return [];
  const ahead = holds.filter((h) => h.atMm > begin);
  const end = ahead.find((h) => !h.proposed)?.atMm ?? total;
  const cuts = [begin, ...ahead.map((h) => h.atMm).filter((s) => s < end), end];
  return cuts.slice(1).map((to, i) => ({ from: cuts[i] as number, to }));
}

/** mm. Spacing of the places at which a stretch's plane is read. */
const PLANE_STEP_MM = 4;

/** Points of the centreline between two arc lengths, both included, evenly spaced. */
export function pointsBetween(
  { points, arcLengthMm }: Pick<ShapeLine, 'points' | 'arcLengthMm'>,
  fromMm: number,
  toMm: number,
): Vec3[] {
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / PLANE_STEP_MM));
  let i = 0;
  return Array.from({ length: steps + 1 }, (_, k) => {
    const s = fromMm + ((toMm - fromMm) * k) / steps;
    while (i + 2 < points.length && (arcLengthMm[i + 1] as number) < s) i++;
    const [s0, s1] = [arcLengthMm[i] as number, arcLengthMm[i + 1] as number];
    return lerp(points[i] as Vec3, points[i + 1] as Vec3, s1 > s0 ? (s - s0) / (s1 - s0) : 0);
  });
}

/** Number of the point at which a row of points is best parted into two of one plane each. */
function planeChange(points: readonly Vec3[]): number {
  let best = { i: Math.floor(points.length / 2), offMm: Number.POSITIVE_INFINITY };
  for (let i = 2; i + 2 < points.length; i++) {
    const offMm = Math.max(planeThrough(points.slice(0, i + 1)).offMm, planeThrough(points.slice(i)).offMm);
    if (offMm < best.offMm) best = { i, offMm };
  }
  return best.i;
}

function broken(line: ShapeLine, wish: Wish, i: number, missingMm: number, measured: number): Broken {
  const arcLengthMm = line.arcLengthMm[i] as number;
  return {
    wish,
    missingMm,
    measured,
    at: { arcLengthMm, point: triple(line.points[i] as Vec3) },
    clampAtMm: arcLengthMm,
  };
}
