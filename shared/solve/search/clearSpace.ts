import { CLEARANCE_PROOF_MM } from '../../base/tolerances.ts';
import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import {
  type ArcLinePath,
  type PathSegment,
  type Pose,
  poseAlongSegment,
  segmentLengthMm,
} from '../../geometry/arcLinePath.ts';
import { type Fall, segmentFalls, turnedRoundFall } from './fall.ts';
import { type NoCrest, segmentHasNoCrest, turnedRoundNoCrest } from './noCrest.ts';
import type { ClearanceField } from './problem.ts';

/** Margins at least this far above 0 are taken from the coarse bound alone. */
const COARSE_IS_ENOUGH_MM = 3;
/** Exact margins are asked for up to this: a longer step would rarely be worth the search for it. */
const EXACT_UP_TO_MM = 20;

/**
 * The field as the search asks it: bounds are walls, `offsetMm` is added to every margin (above 0 = a relaxed field),
 * `plugs` are balls that count as obstacles.
 */
export interface ClearSpace {
  readonly field: ClearanceField;
  readonly offsetMm: number;
  readonly plugs: readonly Plug[];
  /** where the hose has to run downhill */
  readonly fall?: Fall | undefined;
  /** where the hose may have no crest */
  readonly noCrest?: NoCrest | undefined;
}

export interface Plug {
  readonly centre: Vec3;
  readonly radiusMm: number;
}

/** A space of a field, or one that differs from another in what it has or asks more. All are records of one shape. */
export function clearSpace(
  of: Pick<ClearSpace, 'field'> & Partial<ClearSpace>,
  changes: Partial<ClearSpace> = {},
): ClearSpace {
  return {
    field: of.field,
    offsetMm: changes.offsetMm ?? of.offsetMm ?? 0,
    plugs: changes.plugs ?? of.plugs ?? [],
    fall: changes.fall ?? of.fall,
    noCrest: changes.noCrest ?? of.noCrest,
  };
}

/** The same space for one who goes a way backwards: only what depends on direction changes. */
export function turnedRoundSpace(space: ClearSpace): ClearSpace {
  return clearSpace(space, { fall: turnedRoundFall(space.fall), noCrest: turnedRoundNoCrest(space.noCrest) });
}

/** A value that decides: a lower bound where the margin is surely wide, else the exact margin up to `EXACT_UP_TO_MM`. */
export function marginAt(space: ClearSpace, x: number, y: number, z: number): number {
  const walls = wallMargin(space, x, y, z);
  if (walls < 0) return walls;
  const coarse = space.field.coarseMarginMm(x, y, z) + space.offsetMm;
  if (coarse >= COARSE_IS_ENOUGH_MM) return Math.min(walls, coarse);
  // What the field answers beyond the limit is no distance to step by: it may be infinite.
  const exact = space.field.marginMm(x, y, z, EXACT_UP_TO_MM - space.offsetMm) + space.offsetMm;
  return Math.min(walls, exact, EXACT_UP_TO_MM);
}

/** How far a margin may fall within so many mm of a place, mm. */
export function mostFallMm({ field }: ClearSpace, x: number, y: number, z: number, withinMm: number): number {
  return withinMm * field.steepest(x, y, z, withinMm);
}

/** How far it is at least from a place, mm, until the margin has fallen by so many mm, at least 0. */
export function wayOfFallMm({ field }: ClearSpace, x: number, y: number, z: number, fallMm: number): number {
  return fallMm / field.steepest(x, y, z, fallMm);
}

/** How far on from a place with this margin, mm, the next has to be asked. */
function sureStepMm(space: ClearSpace, x: number, y: number, z: number, marginMm: number): number {
  return wayOfFallMm(space, x, y, z, marginMm + 2 * CLEARANCE_PROOF_MM);
}

/** Margin of a place without the walls of the space, mm: a lower bound where it is surely at least `upToMm`, else exact up to that. */
export function marginUpTo({ field, offsetMm }: ClearSpace, x: number, y: number, z: number, upToMm: number): number {
  const coarse = field.coarseMarginMm(x, y, z) + offsetMm;
  return coarse >= upToMm ? coarse : Math.min(upToMm, field.marginMm(x, y, z, upToMm - offsetMm) + offsetMm);
}

/** Least of the distances to the box's faces from inside and to the plugs; negative outside or in a plug. */
export function wallMargin(space: ClearSpace, x: number, y: number, z: number): number {
  const { min, max } = space.field.bounds;
  let least = Math.min(x - min[0], max[0] - x, y - min[1], max[1] - y, z - min[2], max[2] - z);
  for (const { centre, radiusMm } of space.plugs) {
    least = Math.min(least, lengthOf(x - centre[0], y - centre[1], z - centre[2]) - radiusMm);
  }
  return least;
}

/** Whether a point lies in one of the plugs. */
export function isPlugged(space: ClearSpace, x: number, y: number, z: number): boolean {
  for (const { centre, radiusMm } of space.plugs) {
    if (lengthOf(x - centre[0], y - centre[1], z - centre[2]) < radiusMm) return true;
  }
  return false;
}

/**
 * Whether a segment starting at `pose` is clear, falls where it has to and has no crest where it may have none. Conservative advancement: from a margin m the next place asked is
 * (m + 2 tol) / steepness further on, so between two places with margins of at least 0 it is nowhere below -tol, tol =
 * CLEARANCE_PROOF_MM. That is a proof, not sampling.
 */
export function isSegmentClear(space: ClearSpace, pose: Pose, segment: PathSegment): boolean {
  return keepsCharacter(space, pose, segment) && segmentMargin(space, pose, segment) >= 0;
}

function keepsCharacter(space: ClearSpace, pose: Pose, segment: PathSegment): boolean {
  if (space.fall !== undefined && !segmentFalls(space.fall, pose, segment)) return false;
  return space.noCrest === undefined || segmentHasNoCrest(space.noCrest, pose, segment);
}

/** Least margin met along a segment, stopping at the first below 0; places asked as in `isSegmentClear`. */
export function segmentMargin(space: ClearSpace, pose: Pose, segment: PathSegment): number {
  const total = segmentLengthMm(segment);
  const [px, py, pz] = pose.point;
  const [tx, ty, tz] = pose.direction;
  const arc = segment.kind === 'arc';
  const radius = arc ? segment.radiusMm : 1;
  const [nx, ny, nz] = arc ? segment.normal : pose.direction;
  let least = Number.POSITIVE_INFINITY;
  for (let s = 0; ; ) {
    const f = arc ? radius * Math.sin(s / radius) : s;
    const g = arc ? radius * (1 - Math.cos(s / radius)) : 0;
    const [x, y, z] = [px + f * tx + g * nx, py + f * ty + g * ny, pz + f * tz + g * nz];
    const margin = marginAt(space, x, y, z);
    if (margin < least) least = margin;
    if (margin < 0 || s >= total) return least;
    s = Math.min(total, s + sureStepMm(space, x, y, z, margin));
  }
}

/**
 * Whether segments walked one after the other from `pose` are clear, by the proof of `isSegmentClear`, where the margins at
 * their start and end are known already (lower bounds, mm, at least 0): short walks in the open need no look at all.
 */
export function isWalkClear(
  space: ClearSpace,
  pose: Pose,
  segments: readonly PathSegment[],
  startMarginMm: number,
  endMarginMm: number,
): boolean {
  const { lipschitz } = space.field;
  let leftMm = 0;
  for (const segment of segments) leftMm += segmentLengthMm(segment);
  let from = pose;
  let margin = startMarginMm;
  /** how far the next place asked lies beyond `from` */
  let nextMm = sureStepMm(space, ...pose.point, margin);
  for (const segment of segments) {
    if (!keepsCharacter(space, from, segment)) return false;
    const lengthMm = segmentLengthMm(segment);
    while (nextMm < lengthMm && leftMm - nextMm > endMarginMm / lipschitz) {
      const [x, y, z] = poseAlongSegment(from, segment, nextMm).point;
      margin = marginAt(space, x, y, z);
      if (margin < 0) return false;
      nextMm += sureStepMm(space, x, y, z, margin);
    }
    nextMm -= lengthMm;
    leftMm -= lengthMm;
    from = poseAlongSegment(from, segment, lengthMm);
  }
  return true;
}

/** Whether a whole path is clear; probes the joints first, since a blocked path is mostly blocked at one of them. */
export function isPathClear(space: ClearSpace, path: ArcLinePath): boolean {
  const poses: Pose[] = [path.start];
  for (const segment of path.segments) {
    const from = poses.at(-1) as Pose;
    const lengthMm = segmentLengthMm(segment);
    if (!isPointClear(space, poseAlongSegment(from, segment, lengthMm / 2).point)) return false;
    const end = poseAlongSegment(from, segment, lengthMm);
    if (!isPointClear(space, end.point)) return false;
    poses.push(end);
  }
  return path.segments.every((segment, i) => isSegmentClear(space, poses[i] as Pose, segment));
}

export function isPointClear(space: ClearSpace, point: Vec3): boolean {
  return marginAt(space, point[0], point[1], point[2]) >= 0;
}
