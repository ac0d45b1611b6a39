import { ROUNDING_MM, ROUNDING_RAD } from '../base/tolerances.ts';
import {
  add,
  addScaled,
  angleBetween,
  distance,
  dot,
  length,
  rejectFrom,
  scale,
  sub,
  type Vec3,
} from '../base/vec3.ts';
import { type ArcLinePath, type PathSegment, type Pose, poseAlongSegment, segmentLengthMm } from './arcLinePath.ts';

/**
 * The path of arcs through poses, two arcs between neighbours (a biarc with equal tangent lengths; Bolton, "Biarc curves",
 * Computer-Aided Design 7(2), 1975, which holds in space as in the plane). Passes every pose in its direction, without a
 * kink. Through poses of a smooth curve h apart it lies within the order of h^3 of it. poses: two or more, bay frame.
 */
export function pathThroughPoses(poses: readonly Pose[]): ArcLinePath {
  const segments: PathSegment[] = [];
  let pose = poses[0] as Pose;
  for (const next of poses.slice(1)) {
    if (distance(pose.point, next.point) <= ROUNDING_MM) continue;
    for (const point of [jointOf(pose, next), next.point]) {
      const segment = segmentTo(pose, point);
      segments.push(segment);
      pose = poseAlongSegment(pose, segment, segmentLengthMm(segment));
    }
  }
  return { start: poses[0] as Pose, segments };
}

/** Where the two arcs meet. */
function jointOf(from: Pose, to: Pose): Vec3 {
  const chord = sub(to.point, from.point);
  const along = dot(chord, add(from.direction, to.direction));
  const bend = 2 * (1 - dot(from.direction, to.direction));
  const square = dot(chord, chord);
  // The tangent length d of both arcs: bend d^2 + 2 along d - square = 0, in the form that loses no digits where bend is small.
  const d = square / (along + Math.sqrt(along * along + bend * square));
  const middle = scale(add(from.point, to.point), 0.5);
  return addScaled(middle, sub(from.direction, to.direction), d / 2);
}

/** The arc that leaves a pose in its direction and ends at a point; a straight where it lies ahead. */
function segmentTo(pose: Pose, point: Vec3): PathSegment {
  const chord = sub(point, pose.point);
  const half = angleBetween(pose.direction, chord);
  if (half < ROUNDING_RAD) return { kind: 'line', lengthMm: length(chord) };
  const side = rejectFrom(chord, pose.direction);
  return {
    kind: 'arc',
    radiusMm: length(chord) / (2 * Math.sin(half)),
    angleRad: 2 * half,
    normal: scale(side, 1 / length(side)),
  };
}
