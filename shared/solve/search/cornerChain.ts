import { ROUNDING_MM, ROUNDING_RAD } from '../../base/tolerances.ts';
import {
  addScaled,
  distance,
  dot,
  length,
  lengthOf,
  rejectFrom,
  scale,
  sub,
  unit,
  type Vec3,
} from '../../base/vec3.ts';
import { type ArcLinePath, type PathSegment, poseAlongSegment, segmentLengthMm } from '../../geometry/arcLinePath.ts';

/**
 * An arc-line path as a chain of straights with rounded corners. `points` runs from the path's start over the corners to
 * its end; the first and the last straight keep the directions of the ends. `radii[i]` rounds `points[i]`; the two at
 * the ends mean nothing.
 */
export interface CornerChain {
  readonly points: readonly Vec3[];
  readonly radii: readonly number[];
}

/** An arc turning more than this is more than one corner: the corner of a half turn would be at infinity. */
const MOST_TURN_RAD = 1.8;
/** The same for corners that are moved about. */
const MOST_MOVED_TURN_RAD = 2.6;

export function chainOf(path: ArcLinePath): CornerChain {
  const points: Vec3[] = [path.start.point];
  const radii: number[] = [0];
  let pose = path.start;
  for (const segment of path.segments) {
    if (segment.kind === 'arc') {
      const pieces = Math.ceil(segment.angleRad / MOST_TURN_RAD);
      const turn = segment.angleRad / pieces;
      for (let i = 0; i < pieces; i++) {
        const from = poseAlongSegment(pose, segment, i * turn * segment.radiusMm);
        points.push(addScaled(from.point, from.direction, segment.radiusMm * Math.tan(turn / 2)));
        radii.push(segment.radiusMm);
      }
    }
    pose = poseAlongSegment(pose, segment, segmentLengthMm(segment));
  }
  return { points: [...points, pose.point], radii: [...radii, 0] };
}

/** mm; between points nearer to each other than this a direction is not to be trusted */
const SHORTEST_EDGE_MM = 1e-4;

/** Length of the rounded chain, mm; undefined where a straight is too short for the corners at its ends, or a turn too sharp. */
export function chainLengthMm({ points, radii }: CornerChain): number | undefined {
  let total = 0;
  let tangentBefore = 0;
  let edge = distance(points[0] as Vec3, points[1] as Vec3);
  for (let i = 1; i < points.length - 1; i++) {
    const next = distance(points[i] as Vec3, points[i + 1] as Vec3);
    // Where two points fall together the direction between them is lost, and with it a turn.
    if (!(edge > SHORTEST_EDGE_MM && next > SHORTEST_EDGE_MM)) return undefined;
    const turn = turnAt(points, i, edge, next);
    if (turn > MOST_MOVED_TURN_RAD) return undefined;
    const radius = radii[i] as number;
    const tangent = radius * Math.tan(turn / 2);
    const straight = edge - tangentBefore - tangent;
    if (straight < -ROUNDING_MM) return undefined;
    total += straight + radius * turn;
    tangentBefore = tangent;
    edge = next;
  }
  const last = edge - tangentBefore;
  return last < -ROUNDING_MM ? undefined : total + last;
}

/** Turn at corner i, rad. Written out in numbers: it is the inner loop of drawing a chain tight. */
function turnAt(points: readonly Vec3[], i: number, before: number, after: number): number {
  const [ax, ay, az] = points[i - 1] as Vec3;
  const [bx, by, bz] = points[i] as Vec3;
  const [cx, cy, cz] = points[i + 1] as Vec3;
  const [ux, uy, uz] = [(bx - ax) / before, (by - ay) / before, (bz - az) / before];
  const [vx, vy, vz] = [(cx - bx) / after, (cy - by) / after, (cz - bz) / after];
  const cross = lengthOf(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
  return Math.atan2(cross, ux * vx + uy * vy + uz * vz);
}

/**
 * The chain as a path, from the rounding of corner `first` - 1 to that of corner `last` + 1, both without: so all that changes
 * when the corners `first` + 1 .. `last` - 1 move. With first = 1 and last = the last corner it is the whole path.
 */
export function chainPath({ points, radii }: CornerChain, first = 1, last = points.length - 2): ArcLinePath {
  const n = points.length - 2;
  const from = Math.max(1, first);
  const to = Math.min(n, last);
  const edges = points.slice(1).map((p, i) => {
    const along = sub(p, points[i] as Vec3);
    const mm = length(along);
    return { mm, direction: mm > ROUNDING_MM ? scale(along, 1 / mm) : ([0, 0, 0] as Vec3) };
  });
  const corners = points.map((_, i) => {
    if (i < 1 || i > n) return { tangent: 0, turn: 0, normal: [0, 0, 0] as Vec3 };
    const before = (edges[i - 1] as { direction: Vec3 }).direction;
    const after = (edges[i] as { direction: Vec3 }).direction;
    const side = rejectFrom(after, before);
    const size = length(side);
    const turn = Math.atan2(size, dot(before, after));
    const normal = size > ROUNDING_RAD ? unit(rejectFrom(scale(side, 1 / size), before)) : ([0, 0, 0] as Vec3);
    return { tangent: (radii[i] as number) * Math.tan(turn / 2), turn, normal };
  });
  const begin = corners[from - 1] as { tangent: number };
  const firstDirection = (edges[from - 1] as { direction: Vec3 }).direction;
  const start = {
    point: addScaled(points[from - 1] as Vec3, firstDirection, begin.tangent),
    direction: firstDirection,
  };
  const segments: PathSegment[] = [];
  for (let i = from - 1; i <= to; i++) {
    const here = corners[i] as { tangent: number; turn: number; normal: Vec3 };
    const next = corners[i + 1] as { tangent: number };
    if (i >= from && here.turn > ROUNDING_RAD) {
      segments.push({ kind: 'arc', radiusMm: radii[i] as number, angleRad: here.turn, normal: here.normal });
    }
    const lengthMm = (edges[i] as { mm: number }).mm - here.tangent - next.tangent;
    if (lengthMm > ROUNDING_MM) segments.push({ kind: 'line', lengthMm });
  }
  return { start, segments };
}
