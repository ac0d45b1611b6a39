import type { Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { type Pose, pathLengthMm, samplePath } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import type { ClearSpace } from './clearSpace.ts';
import { CornerLattice, cornerCellMm } from './cornerLattice.ts';
import { cornerSearch } from './cornerSearch.ts';
import type { EndPose } from './endPoses.ts';
import { cellFor, type GuideGrid } from './firstWays.ts';
import { GoalDistance, gridOver } from './goalDistance.ts';
import { remembered } from './remembered.ts';

export interface CornerLook {
  readonly candidate?: Candidate;
  readonly expanded: number;
}

/** Looks for ways over one lattice of corners, each look with all the ways known before it made dear. */
export type CornerWays = (known: readonly Candidate[], mostStates: number, watch: Watch) => CornerLook;

/** Weight of the estimate: the lattice is coarser than 10 %, and the way found is shortened afterwards. */
const GREED = 1.3;
/** A place within this many radii of a known way costs so much more for each such way. */
const WORN_RADII = 1;
const WORN_COST = 0.6;
/** Share of a known way at either end that is not made dear: every way starts and ends there. */
const END_SHARE = 0.15;

/**
 * Opens a lattice of corners of a fineness (1 = coarsest) between starts and goals. All looks share what was learnt of
 * the bay: the margins at nodes and the distances to the goals.
 */
export function openCornerWays(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  guideGrid: GuideGrid,
  fineness: number,
): CornerWays {
  const from = starts.map(({ pose }) => pose);
  const to = goals.map(({ pose }) => pose);
  const guide = guideTo(space, to.map(pointOf), guideGrid);
  const cellMm = cellFor(space, cornerCellMm(radiusMm, fineness));
  const name = `lattice ${nameOf(space, to.map(pointOf), guideGrid)} ${radiusMm} ${cellMm}`;
  const lattice = remembered(space.field, name, () => {
    return new CornerLattice(space, radiusMm, gridOver(space.field.bounds, cellMm));
  });
  return (known, mostStates, watch) => {
    const setting = { lattice, guide, greed: GREED, mostStates };
    const worn = known.length === 0 ? setting : { ...setting, dearness: wornBy(known, radiusMm) };
    const { path, start, goal, expanded } = cornerSearch(space, from, to, worn, watch);
    if (path === undefined) return { expanded };
    const clocks = [(starts[start] as EndPose).clockRad, (goals[goal] as EndPose).clockRad] as const;
    return { candidate: candidateOf(path, ...clocks), expanded };
  };
}

/** Distances to these goals; one for all searches over a field that want the same. */
export function guideTo(space: ClearSpace, goals: readonly Vec3[], guideGrid: GuideGrid): GoalDistance {
  const { grid, states } = guideGrid;
  return remembered(space.field, `guide ${nameOf(space, goals, guideGrid)}`, () => {
    return new GoalDistance(space, grid, states, goals);
  });
}

function nameOf({ offsetMm, plugs }: ClearSpace, goals: readonly Vec3[], { grid }: GuideGrid): string {
  return JSON.stringify([offsetMm, plugs, goals, grid.cellMm]);
}

function pointOf({ point }: Pose): Vec3 {
  return point;
}

/** How dear a place is that known ways have worn. */
function wornBy(known: readonly Candidate[], radiusMm: number): (x: number, y: number, z: number) => number {
  const near = WORN_RADII * radiusMm;
  const ways = known.map(({ path }) => middlePlaces(path, near / 2));
  return (x, y, z) => {
    let dear = 1;
    for (const places of ways) {
      if (places.some(([px, py, pz]) => (x - px) ** 2 + (y - py) ** 2 + (z - pz) ** 2 < near * near)) dear += WORN_COST;
    }
    return dear;
  };
}

function middlePlaces(path: Candidate['path'], stepMm: number): Vec3[] {
  const places = samplePath(path, Math.min(stepMm, pathLengthMm(path) / 8)).map(({ point }) => point);
  const skipped = Math.floor(END_SHARE * places.length);
  return places.slice(skipped, places.length - skipped);
}
