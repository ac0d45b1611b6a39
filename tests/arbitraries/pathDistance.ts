import { addScaled, cross, distance, dot, sub, type Vec3 } from '../../shared/base/vec3.ts';
import { type ArcLinePath, type PathSegment, type Pose, posesAtJoints } from '../../shared/geometry/arcLinePath.ts';

/** Exact distance, mm, of any point from a path of straights and arcs, in closed form segment by segment. */
export function distanceToPath(path: ArcLinePath): (point: Vec3) => number {
  const joints = posesAtJoints(path);
  return (point) =>
    path.segments.reduce(
      (least, segment, i) => Math.min(least, distanceToSegment(joints[i]!, joints[i + 1]!, segment, point)),
      distance(point, path.start.point),
    );
}

function distanceToSegment(from: Pose, to: Pose, segment: PathSegment, point: Vec3): number {
  const atEnds = Math.min(distance(point, from.point), distance(point, to.point));
  if (segment.kind === 'line') {
    const along = dot(sub(point, from.point), from.direction);
    if (along < 0 || along > segment.lengthMm) return atEnds;
    return distance(point, addScaled(from.point, from.direction, along));
  }
  const centre = addScaled(from.point, segment.normal, segment.radiusMm);
  const away = sub(point, centre);
  const outwards = -dot(away, segment.normal);
  const ahead = dot(away, from.direction);
  const turn = (Math.atan2(ahead, outwards) + 2 * Math.PI) % (2 * Math.PI);
  if (turn > segment.angleRad) return atEnds;
  const aside = dot(away, cross(segment.normal, from.direction));
  return Math.hypot(Math.hypot(outwards, ahead) - segment.radiusMm, aside);
}
