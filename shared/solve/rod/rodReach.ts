import { SAME_DIRECTION_RAD } from '../../base/tolerances.ts';
import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  length,
  rejectFrom,
  sub,
  turnAbout,
  type Vec3,
} from '../../base/vec3.ts';
import { STRAIGHT_RELATIVE } from './rodLimits.ts';
import type { RodEnd, RodProblem } from './rodProblem.ts';

/** Clocks of end A tried as starts when looking for the nearest pair of points of two circles. */
const STARTS = 24;

/** Projections from one circle to the other and back. */
const PROJECTIONS = 40;

/** An end's point and direction at a clock (rad), mm, bay frame. */
export function endAt(end: RodEnd, clockRad: number): { point: Vec3; direction: Vec3 } {
  if (end.kind === 'held') return end;
  return {
    point: add(end.axisPoint, turnAbout(sub(end.point, end.axisPoint), end.axis, clockRad)),
    direction: turnAbout(end.direction, end.axis, clockRad),
  };
}

export function clockOf(end: RodEnd): number {
  return end.kind === 'turning' ? end.clockRad : 0;
}

/** The clock at which a turning end's point is nearest to a target. */
function nearestClock(end: RodEnd, target: Vec3, otherwise: number): number {
  if (end.kind === 'held') return 0;
  const arm = rejectFrom(sub(end.point, end.axisPoint), end.axis);
  const wanted = rejectFrom(sub(target, end.axisPoint), end.axis);
  if (length(arm) === 0 || length(wanted) === 0) return otherwise;
  return Math.atan2(dot(end.axis, cross(arm, wanted)), dot(arm, wanted));
}

/** The clocks at which the two ends' points are nearest, by projecting from circle to circle from several starts. */
function nearestClocks(a: RodEnd, b: RodEnd): { clockA: number; clockB: number; distanceMm: number } {
  let best = { clockA: clockOf(a), clockB: clockOf(b), distanceMm: Number.POSITIVE_INFINITY };
  for (let start = 0; start < (a.kind === 'turning' ? STARTS : 1); start++) {
    let clockA = clockOf(a) + (2 * Math.PI * start) / STARTS;
    let clockB = clockOf(b);
    for (let i = 0; i < PROJECTIONS; i++) {
      clockB = nearestClock(b, endAt(a, clockA).point, clockB);
      clockA = nearestClock(a, endAt(b, clockB).point, clockA);
    }
    const distanceMm = distance(endAt(a, clockA).point, endAt(b, clockB).point);
    if (distanceMm < best.distanceMm) best = { clockA, clockB, distanceMm };
  }
  return best;
}

export interface Reach {
  readonly kind: 'slack' | 'straight' | 'too-short';
  /** rad, clocks to start from */
  readonly clockA: number;
  readonly clockB: number;
}

/**
 * Whether a hose of the problem's length can join the ends at all: with slack, as a straight line only (both ends must
 * then point along it), or not. The clocks are the problem's own unless the hose reaches only at others.
 */
export function reach(problem: RodProblem): Reach {
  const { a, b, lengthMm } = problem;
  let clocks = { clockA: clockOf(a), clockB: clockOf(b), distanceMm: 0 };
  clocks.distanceMm = distance(endAt(a, clocks.clockA).point, endAt(b, clocks.clockB).point);
  const rounding = STRAIGHT_RELATIVE * lengthMm;
  if (clocks.distanceMm > lengthMm + rounding) clocks = nearestClocks(a, b);
  const { clockA, clockB, distanceMm } = clocks;
  if (distanceMm > lengthMm + rounding) return { kind: 'too-short', clockA, clockB };
  if (distanceMm < lengthMm - rounding) return { kind: 'slack', clockA, clockB };
  const from = endAt(a, clockA);
  const to = endAt(b, clockB);
  const line = sub(to.point, from.point);
  const aligned = (d: Vec3): boolean => {
    const off = addScaled(d, line, -1 / distanceMm);
    return length(off) <= SAME_DIRECTION_RAD;
  };
  return { kind: aligned(from.direction) && aligned(to.direction) ? 'straight' : 'too-short', clockA, clockB };
}
