import { ROUNDING_MM, ROUNDING_RAD } from '../base/tolerances.ts';
import { addScaled, distance, scale, unit, type Vec3 } from '../base/vec3.ts';

/** A place on a hose and the way the hose goes there. */
export interface Pose {
  /** mm */
  readonly point: Vec3;
  /** unit vector along the hose, from its A end to its B end */
  readonly direction: Vec3;
}

export interface LineSegment {
  readonly kind: 'line';
  readonly lengthMm: number;
}

export interface ArcSegment {
  readonly kind: 'arc';
  readonly radiusMm: number;
  /** how far the direction turns, above 0; may be more than pi */
  readonly angleRad: number;
  /** unit vector from the arc's start towards its centre, square to the direction there */
  readonly normal: Vec3;
}

export type PathSegment = LineSegment | ArcSegment;

/** Straights and circular arcs joined without a kink: each starts where, and in the direction in which, the last ended. A path never changes. */
export interface ArcLinePath {
  readonly start: Pose;
  readonly segments: readonly PathSegment[];
}

/** Length of one segment, mm. Exact. */
export function segmentLengthMm(segment: PathSegment): number {
  return segment.kind === 'line' ? segment.lengthMm : segment.radiusMm * segment.angleRad;
}

/** Where a segment that starts at `pose` stands after `alongMm` of its length. Closed form. */
export function poseAlongSegment(pose: Pose, segment: PathSegment, alongMm: number): Pose {
  const { point, direction } = pose;
  if (segment.kind === 'line') return { point: addScaled(point, direction, alongMm), direction };
  const { radiusMm, normal } = segment;
  const c = Math.cos(alongMm / radiusMm);
  const s = Math.sin(alongMm / radiusMm);
  return {
    point: addScaled(addScaled(point, direction, radiusMm * s), normal, radiusMm * (1 - c)),
    direction: unit(addScaled(scale(direction, c), normal, s)),
  };
}

/** Total length, mm. */
export function pathLengthMm(path: ArcLinePath): number {
  let total = 0;
  for (const segment of path.segments) total += segmentLengthMm(segment);
  return total;
}

/** Poses at the start of each segment, and at the end of the path last: one more than there are segments. */
export function posesAtJoints(path: ArcLinePath): Pose[] {
  const poses = [path.start];
  let pose = path.start;
  for (const segment of path.segments) {
    pose = poseAlongSegment(pose, segment, segmentLengthMm(segment));
    poses.push(pose);
  }
  return poses;
}

/** Pose at the end of the path. */
export function pathEnd(path: ArcLinePath): Pose {
  return posesAtJoints(path).at(-1) as Pose;
}

const joints = new WeakMap<ArcLinePath, readonly Pose[]>();

/** As `posesAtJoints`, worked out once for each path: who asks for one place of a path asks for more. */
function knownJoints(path: ArcLinePath): readonly Pose[] {
  const known = joints.get(path);
  if (known !== undefined) return known;
  const poses = posesAtJoints(path);
  joints.set(path, poses);
  return poses;
}

/** Pose after `alongMm` of the path; below 0 is the start, beyond the length is the end. */
export function poseOnPath(path: ArcLinePath, alongMm: number): Pose {
  const poses = knownJoints(path);
  let left = Math.max(0, alongMm);
  for (let i = 0; i < path.segments.length; i++) {
    const segment = path.segments[i] as PathSegment;
    const lengthMm = segmentLengthMm(segment);
    if (left <= lengthMm) return poseAlongSegment(poses[i] as Pose, segment, left);
    left -= lengthMm;
  }
  return poses[path.segments.length] as Pose;
}

/** Poses at even distances of at most `stepMm` along the path, both ends among them. */
export function samplePath(path: ArcLinePath, stepMm: number): Pose[] {
  const total = pathLengthMm(path);
  const steps = Math.max(1, Math.ceil(total / stepMm));
  const samples: Pose[] = [];
  let pose = path.start;
  let begin = 0;
  let next = 0;
  for (const segment of path.segments) {
    const lengthMm = segmentLengthMm(segment);
    for (; next < steps && (next * total) / steps < begin + lengthMm; next++) {
      samples.push(poseAlongSegment(pose, segment, (next * total) / steps - begin));
    }
    pose = poseAlongSegment(pose, segment, lengthMm);
    begin += lengthMm;
  }
  return [...samples, pose];
}

/** The same place looked at the other way. */
export function reversedPose({ point, direction }: Pose): Pose {
  return { point, direction: scale(direction, -1) };
}

/** The same curve gone along from its end to its start. */
export function reversedPath(path: ArcLinePath): ArcLinePath {
  const poses = posesAtJoints(path);
  const end = poses.at(-1) as Pose;
  const segments: PathSegment[] = [];
  for (let i = path.segments.length - 1; i >= 0; i--) {
    const segment = path.segments[i] as PathSegment;
    const from = poses[i] as Pose;
    segments.push(
      segment.kind === 'line' ? segment : { ...segment, normal: normalAlong(from, segment, segment.angleRad) },
    );
  }
  return { start: reversedPose(end), segments };
}

/** `first`, then `second`, which starts where `first` ends: one tidied path. */
export function joinPaths(first: ArcLinePath, second: ArcLinePath): ArcLinePath {
  return tidiedPath({ start: first.start, segments: [...first.segments, ...second.segments] });
}

/** The same curve with segments of no length left out, and segments that go on in the same way made one. */
export function tidiedPath(path: ArcLinePath): ArcLinePath {
  const segments: PathSegment[] = [];
  let from = path.start;
  let pose = path.start;
  for (const segment of path.segments) {
    const lengthMm = segmentLengthMm(segment);
    if (lengthMm <= ROUNDING_MM) continue;
    const last = segments.at(-1);
    const merged = last && continued(from, last, segment);
    if (merged) segments[segments.length - 1] = merged;
    else {
      segments.push(segment);
      from = pose;
    }
    pose = poseAlongSegment(pose, segment, lengthMm);
  }
  return { start: path.start, segments };
}

/** The part of a path from `fromMm` to `toMm` along it (0 <= fromMm <= toMm <= length). */
export function partOfPath(path: ArcLinePath, fromMm: number, toMm: number): ArcLinePath {
  const poses = knownJoints(path);
  const segments: PathSegment[] = [];
  let start: Pose | undefined;
  let begin = 0;
  for (let i = 0; i < path.segments.length; i++) {
    const segment = path.segments[i] as PathSegment;
    const lengthMm = segmentLengthMm(segment);
    const from = Math.max(0, fromMm - begin);
    const to = Math.min(lengthMm, toMm - begin);
    if (to > from) {
      start ??= poseAlongSegment(poses[i] as Pose, segment, from);
      segments.push(partOfSegment(poses[i] as Pose, segment, from, to));
    }
    begin += lengthMm;
  }
  return { start: start ?? poseOnPath(path, fromMm), segments };
}

/** The smallest arc radius of a path, mm; infinite where all is straight. */
export function tightestRadiusMm(path: ArcLinePath): number {
  let least = Number.POSITIVE_INFINITY;
  for (const segment of path.segments) if (segment.kind === 'arc') least = Math.min(least, segment.radiusMm);
  return least;
}

/** Towards the arc's centre after it has turned by `angleRad`. */
function normalAlong(pose: Pose, arc: ArcSegment, angleRad: number): Vec3 {
  return unit(addScaled(scale(arc.normal, Math.cos(angleRad)), pose.direction, -Math.sin(angleRad)));
}

/** `last` (starting at `from`) and `next` as one segment, if they are one line or one circle. */
function continued(from: Pose, last: PathSegment, next: PathSegment): PathSegment | undefined {
  if (last.kind === 'line')
    return next.kind === 'line' ? { kind: 'line', lengthMm: last.lengthMm + next.lengthMm } : undefined;
  if (next.kind === 'line' || Math.abs(last.radiusMm - next.radiusMm) > ROUNDING_MM) return undefined;
  if (distance(normalAlong(from, last, last.angleRad), next.normal) > ROUNDING_RAD) return undefined;
  const angleRad = last.angleRad + next.angleRad;
  return angleRad < 2 * Math.PI ? { ...last, angleRad } : undefined;
}

function partOfSegment(pose: Pose, segment: PathSegment, fromMm: number, toMm: number): PathSegment {
  if (segment.kind === 'line') return { kind: 'line', lengthMm: toMm - fromMm };
  const { radiusMm } = segment;
  const normal = fromMm > 0 ? normalAlong(pose, segment, fromMm / radiusMm) : segment.normal;
  return { kind: 'arc', radiusMm, angleRad: (toMm - fromMm) / radiusMm, normal };
}
