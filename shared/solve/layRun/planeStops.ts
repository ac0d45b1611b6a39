import { clocksInTurn, isInTurn } from '../../base/turnRange.ts';
import { cross, dot, length, scale, sub, type Vec3 } from '../../base/vec3.ts';
import { connectPoses } from '../../geometry/arcLineConnector.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { endPoseAt, standsClear } from '../search/endPoses.ts';
import type { EndChoice } from '../search/problem.ts';

/** Two stops of a stretch as they stand when a hose between them can lie in one plane. */
export interface PlaneStops {
  readonly from: { readonly pose: Pose; readonly clockRad: number };
  readonly to: { readonly pose: Pose; readonly clockRad: number };
  /** unit normal of their plane; undefined where both point along the line between them: then any plane will do */
  readonly normal: Vec3 | undefined;
}

/** Clocks of a turning end between which a plane is looked for. */
const CLOCKS = 24;
/** Halvings of a clock between two of them: down to rounding. */
const HALVINGS = 40;
/** Sine of 3 degrees: stops less out of plane than this count as in one; what that bends a hose out of it is judged. */
const IN_PLANE = 0.0524;
/** How many pairs of stops are offered. */
const MOST = 3;

/**
 * The ways in which a stretch's stops can stand in one plane, the shortest first: held stops as they are, swivel ends at
 * the clocks at which the line between both stops and both directions are coplanar. None where no clock does it. Method:
 * sign changes of the triple product over the clocks, halved down. radiusMm: least radius, to tell short from long.
 */
export function planeStops(from: EndChoice, to: EndChoice, radiusMm: number): PlaneStops[] {
  const pairs = clocksOf(from).flatMap((a) => {
    const start = { pose: endPoseAt(from, a).pose, clockRad: a };
    if (to.kind === 'turning') return rootsOf((b) => outOfPlane(start.pose, to.poseAt(b))).map((b) => ({ a, b }));
    return [{ a, b: 0 }];
  });
  const goal = to.kind === 'held' ? to.pose : undefined;
  const met =
    from.kind === 'turning' && goal !== undefined
      ? rootsOf((a) => outOfPlane(from.poseAt(a), goal)).map((a) => ({ a, b: 0 }))
      : pairs;
  return met
    .filter(({ a, b }) => mayStand(from, a) && mayStand(to, b))
    .map(({ a, b }) => stopsAt(from, to, a, b))
    .filter(({ from: f, to: t }) => Math.abs(outOfPlane(f.pose, t.pose)) < IN_PLANE)
    .map((stops) => ({ stops, lengthMm: connectPoses(stops.from.pose, stops.to.pose, radiusMm)?.lengthMm ?? Infinity }))
    .sort((p, q) => p.lengthMm - q.lengthMm)
    .slice(0, MOST)
    .map(({ stops }) => stops);
}

function clocksOf(end: EndChoice): number[] {
  if (end.kind === 'held') return [0];
  if (end.clocks !== undefined) return clocksInTurn(end.clocks, CLOCKS);
  return Array.from({ length: CLOCKS }, (_, i) => (2 * Math.PI * i) / CLOCKS);
}

function mayStand(end: EndChoice, clockRad: number): boolean {
  const isAllowed = end.kind === 'held' || end.clocks === undefined || isInTurn(end.clocks, clockRad);
  return isAllowed && standsClear(end, clockRad);
}

function stopsAt(from: EndChoice, to: EndChoice, a: number, b: number): PlaneStops {
  const start = endPoseAt(from, a);
  const end = endPoseAt(to, b);
  const across = sub(end.pose.point, start.pose.point);
  const first = cross(start.pose.direction, across);
  const second = cross(across, end.pose.direction);
  const wider = length(first) >= length(second) ? first : second;
  const size = length(wider);
  const normal = size > IN_PLANE * length(across) ? scale(wider, 1 / size) : undefined;
  return { from: start, to: end, normal };
}

/** Volume that both directions and the unit line between both points span: 0 = one plane. */
function outOfPlane(from: Pose, to: Pose): number {
  const across = sub(to.point, from.point);
  const mm = length(across);
  return mm === 0 ? 0 : dot(cross(from.direction, scale(across, 1 / mm)), to.direction);
}

/** Clocks at which a function of the clock is zero. */
function rootsOf(valueAt: (clockRad: number) => number): number[] {
  const step = (2 * Math.PI) / CLOCKS;
  return Array.from({ length: CLOCKS }, (_, i) => i).flatMap((i) => {
    let low = i * step;
    let high = low + step;
    const below = valueAt(low) <= 0;
    // The last piece ends where the first began: asked at the same clock, so that rounding loses no zero between them.
    if (valueAt(i + 1 === CLOCKS ? 0 : high) <= 0 === below) return [];
    for (let n = 0; n < HALVINGS; n++) {
      const middle = (low + high) / 2;
      if (valueAt(middle) <= 0 === below) low = middle;
      else high = middle;
    }
    return [low];
  });
}
