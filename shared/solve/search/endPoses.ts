import type { Pose } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, isPointClear } from './clearSpace.ts';
import type { EndChoice } from './problem.ts';

/** One way an end may stand: its clock and the pose of its mouth. */
export interface EndPose {
  readonly clockRad: number;
  readonly pose: Pose;
}

/** Pose of an end at a clock; a held end has one pose. */
export function endPoseAt(end: EndChoice, clockRad: number): EndPose {
  if (end.kind === 'held') return { clockRad: 0, pose: end.pose };
  const turn = 2 * Math.PI;
  const wrapped = clockRad - turn * Math.floor(clockRad / turn);
  return { clockRad: wrapped, pose: end.poseAt(wrapped) };
}

/** `count` clocks evenly round a turning end, or the one pose of a held end. */
export function endPoses(end: EndChoice, count: number): EndPose[] {
  if (end.kind === 'held') return [endPoseAt(end, 0)];
  return Array.from({ length: count }, (_, i) => endPoseAt(end, (2 * Math.PI * i) / count));
}

/** Those of the poses whose mouth is clear. */
export function clearEndPoses(space: ClearSpace, poses: readonly EndPose[]): EndPose[] {
  return poses.filter(({ pose }) => isPointClear(space, pose.point));
}
