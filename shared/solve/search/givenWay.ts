import { addScaled, anySquareTo, cross, lengthOf, type Vec3 } from '../../base/vec3.ts';
import { type ClearSpace, marginUpTo } from './clearSpace.ts';

/** mm. Margins of at least this are taken from the coarse bound alone, and are roomy. */
export const ROOMY_MM = 3;
/** mm. A place with less is moved aside; the margin that it is moved to, where there is one; what may be short all the same. */
const NARROW_MM = 0.3;
const AIMED_MM = 0.8;
const SHORT_MM = 0.5;
const SLOPE_STEP_MM = 0.25;
const LEAST_SLOPE = 0.15;
const LEAST_GAIN_MM = 0.05;
const LEAST_LEFT_MM = 0.2;
const MOVES = 5;
const HALVINGS = 3;

/** A place, its margin, and how far it was moved to get there, mm. */
export interface GivenWay {
  readonly place: Vec3;
  readonly marginMm: number;
  readonly movedMm: number;
}

/**
 * The place moved square to a heading to where it is clear, by at most `mostMm` mm: as a hose that is pushed through a hole gives
 * way to its edge. Undefined where no such place is found. Method: steepest ascent of the margin in that plane.
 */
export function givenWay(space: ClearSpace, at: Vec3, heading: Vec3, mostMm: number): GivenWay | undefined {
  let here: GivenWay = { place: at, marginMm: roomAt(space, at), movedMm: 0 };
  if (here.marginMm >= NARROW_MM) return here;
  if (here.marginMm < -mostMm - SHORT_MM) return undefined;
  const u = anySquareTo(heading);
  const v = cross(heading, u);
  for (let move = 0; move < MOVES && here.marginMm < NARROW_MM; move++) {
    const next = higher(space, here, u, v, mostMm - here.movedMm);
    if (next === undefined) break;
    here = next;
  }
  return here.marginMm < -SHORT_MM ? undefined : here;
}

/** Margin of a place, mm: a lower bound where that is roomy. */
export function roomAt(space: ClearSpace, [x, y, z]: Vec3): number {
  return marginUpTo(space, x, y, z, ROOMY_MM);
}

function higher(
  space: ClearSpace,
  { place, marginMm, movedMm }: GivenWay,
  u: Vec3,
  v: Vec3,
  leftMm: number,
): GivenWay | undefined {
  if (leftMm < LEAST_LEFT_MM) return undefined;
  const slope = (axis: Vec3): number =>
    (roomAt(space, addScaled(place, axis, SLOPE_STEP_MM)) - marginMm) / SLOPE_STEP_MM;
  const [gu, gv] = [slope(u), slope(v)];
  const steepness = lengthOf(gu, gv);
  if (steepness < LEAST_SLOPE) return undefined;
  let stepMm = Math.min(leftMm, (AIMED_MM - marginMm) / steepness + LEAST_GAIN_MM);
  for (let halving = 0; halving < HALVINGS; halving++, stepMm /= 2) {
    const to = addScaled(addScaled(place, u, (stepMm * gu) / steepness), v, (stepMm * gv) / steepness);
    const there = roomAt(space, to);
    if (there > marginMm + LEAST_GAIN_MM) return { place: to, marginMm: there, movedMm: movedMm + stepMm };
  }
  return undefined;
}
