import { addScaled, distance, scale, sub, unit, type Vec3 } from '../../base/vec3.ts';
import { type Pose, pathLengthMm } from '../../geometry/arcLinePath.ts';
import { nearestArcMm } from '../../geometry/nearestArc.ts';
import { pathThroughPoses } from '../../geometry/pathThroughPoses.ts';
import type { Way } from '../search/problem.ts';
import { type Route, routeOf, type Station, tailToStation, wayOfLock, wayOfNoLength } from './routeRun.ts';
import { clocksOf, type EndSetting, fittedAt, nearestClockOf, type RunSetting, tailPose } from './runSetting.ts';
import { withLocks } from './stations.ts';

/** mm. Spacing of the poses that a route takes over from a line: arcs through them lie within a few micrometres of a hose. */
const POSE_STEP_MM = 8;
/** mm. Poses nearer to a clamp than this, or than three times its distance from the line, are left out: they would make a kink. */
const CLEAR_OF_STOP_MM = 3;

/** A line of points with the length up to each, mm. */
export interface MeasuredLine {
  readonly points: readonly Vec3[];
  readonly arcLengthMm: readonly number[];
}

export function measuredLine(points: readonly Vec3[]): MeasuredLine {
  const arcLengthMm = [0];
  for (let i = 1; i < points.length; i++)
    arcLengthMm.push((arcLengthMm[i - 1] as number) + distance(points[i - 1] as Vec3, points[i] as Vec3));
  return { points, arcLengthMm };
}

/**
 * A route that runs along a line, shoulder A to shoulder B, from tail to tail and through everything that holds the run:
 * arcs through the line's own points. Its length is that of a hose that lies so. Swivels stand at the clocks at which
 * their shoulders come nearest to the line's ends. Waypoints are left out: the line is led already.
 */
export function routeAlong(setting: RunSetting, line: MeasuredLine): Route {
  const supports = setting.supports.flatMap((s): Station[] =>
    s.kind === 'waypoint' || s.axis === undefined
      ? []
      : [{ id: s.id, kind: s.kind, proposed: false, pose: { point: s.point, direction: unit(s.axis) } }],
  );
  const stations = withLocks(supports, setting.supports, setting.locks ?? []);
  const { points } = line;
  const clockA = nearestClock(setting.a, points, 1);
  const clockB = nearestClock(setting.b, points, -1);
  const tailMm = {
    a: tailToStation(setting, 'a', setting.tailMm, stations[0], clockA),
    b: tailToStation(setting, 'b', setting.tailMm, stations[stations.length - 1], clockB),
  };
  const stops: Pose[] = [
    tailPose(setting.a, 'a', tailMm.a, clockA),
    ...stations.map((s) => s.pose),
    tailPose(setting.b, 'b', tailMm.b, clockB),
  ];
  const ways = stops.slice(1).map((to, i): Way => {
    const from = stops[i] as Pose;
    const lying = wayOfLock(stations[i - 1]);
    if (lying !== undefined) return lying;
    const none = wayOfNoLength({ kind: 'held', pose: from }, { kind: 'held', pose: to });
    const path = none?.path ?? pathThroughPoses([from, ...posesBetween(line, from, to), to]);
    return { path, lengthMm: pathLengthMm(path), fromClockRad: clockA, toClockRad: clockB, leastMarginMm: 0 };
  });
  return routeOf(setting, ways, stations, tailMm);
}

/** Poses of the line between two stops, clear of both. */
function posesBetween(line: MeasuredLine, from: Pose, to: Pose): Pose[] {
  const { points, arcLengthMm } = line;
  const begin = clearOf(line, from, 1);
  const end = clearOf(line, to, -1);
  const poses: Pose[] = [];
  let next = begin;
  for (let i = 1; i + 1 < points.length; i++) {
    const at = arcLengthMm[i] as number;
    if (at < next || at > end) continue;
    poses.push({ point: points[i] as Vec3, direction: directionAt(line, i) });
    next = at + POSE_STEP_MM * 0.9;
  }
  return poses;
}

/** Arc length beyond a stop from which on the line is taken over. */
function clearOf(line: MeasuredLine, { point }: Pose, way: 1 | -1): number {
  const at = nearestArcMm(line.points, line.arcLengthMm, point);
  const off = Math.min(...line.points.map((p) => distance(p, point)));
  return at + way * Math.max(CLEAR_OF_STOP_MM, Math.min(3 * off, 60));
}

/** Direction of a line at one of its inner points: of the parabola through it and its neighbours. */
function directionAt({ points, arcLengthMm }: MeasuredLine, i: number): Vec3 {
  const [p, q, r] = [points[i - 1] as Vec3, points[i] as Vec3, points[i + 1] as Vec3];
  const before = (arcLengthMm[i] as number) - (arcLengthMm[i - 1] as number);
  const after = (arcLengthMm[i + 1] as number) - (arcLengthMm[i] as number);
  return unit(addScaled(scale(sub(q, p), after / before), sub(r, q), before / after));
}

/** mm. A difference of directions of one radian counts as much as this. */
const TURN_COUNTS_MM = 60;
const CLOCKS = 72;
/** rad. How finely the clock is found. */
const CLOCK_STEP_RAD = 1e-4;

/** The clock at which an end's shoulder and hose axis come nearest to an end of the line. way: 1 = its start, -1 = its end. */
function nearestClock(end: EndSetting, points: readonly Vec3[], way: 1 | -1): number {
  if (!end.turns) return end.clockRad;
  const first = points[way > 0 ? 0 : points.length - 1] as Vec3;
  const ahead = unit(sub(points[way > 0 ? 1 : points.length - 2] as Vec3, first));
  const off = (clockRad: number): number => {
    const { shoulderPoint, hoseAxis } = fittedAt(end, clockRad);
    return distance(shoulderPoint, first) ** 2 + (TURN_COUNTS_MM * distance(hoseAxis, ahead)) ** 2;
  };
  let best = nearestClockOf(end, 0);
  for (const clock of clocksOf(end, CLOCKS)) if (off(clock) < off(best)) best = clock;
  for (let step = Math.PI / CLOCKS; step > CLOCK_STEP_RAD; step /= 2)
    for (const clock of [best - step, best + step].map((c) => nearestClockOf(end, c)))
      if (off(clock) < off(best)) best = clock;
  return best;
}
