import { clocksInTurn, nearestInTurn } from '../../base/turnRange.ts';
import type { Vec3 } from '../../base/vec3.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, isPointClear } from './clearSpace.ts';
import type { EndChoice } from './problem.ts';

/** One way an end may stand: its clock and the pose of its mouth. */
export interface EndPose {
  readonly clockRad: number;
  readonly pose: Pose;
}

/** Pose of an end at a clock, or at the nearest one it may turn to; a held end has one pose. */
export function endPoseAt(end: EndChoice, clockRad: number): EndPose {
  if (end.kind === 'held') return { clockRad: 0, pose: end.pose };
  if (end.clocks !== undefined) {
    const allowed = nearestInTurn(end.clocks, clockRad);
    return { clockRad: allowed, pose: end.poseAt(allowed) };
  }
  const turn = 2 * Math.PI;
  const wrapped = clockRad - turn * Math.floor(clockRad / turn);
  return { clockRad: wrapped, pose: end.poseAt(wrapped) };
}

/** `count` clocks evenly over those a turning end may stand at, or the one pose of a held end. */
export function endPoses(end: EndChoice, count: number): EndPose[] {
  if (end.kind === 'held') return [endPoseAt(end, 0)];
  if (end.clocks !== undefined) return clocksInTurn(end.clocks, count).map((clockRad) => endPoseAt(end, clockRad));
  return Array.from({ length: count }, (_, i) => endPoseAt(end, (2 * Math.PI * i) / count));
}

/** Whether the end itself stands clear at a clock. */
export function standsClear(end: EndChoice, clockRad: number): boolean {
  return end.kind === 'held' || end.standsClear === undefined || end.standsClear(clockRad);
}

/** Those of an end's poses whose mouth is clear and where the end itself stands clear. */
export function clearEndPoses(space: ClearSpace, end: EndChoice, poses: readonly EndPose[]): EndPose[] {
  return poses.filter(({ clockRad, pose }) => isPointClear(space, pose.point) && standsClear(end, clockRad));
}

/** Where the mouth stands. */
export function pointOf({ pose }: EndPose): Vec3 {
  return pose.point;
}
