import type { Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { type Pose, pathLengthMm, reversedPath, reversedPose, samplePath } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, turnedRoundSpace } from './clearSpace.ts';
import { CornerLattice, cornerCellMm } from './cornerLattice.ts';
import { CornerSearch, type CornerSearchSetting } from './cornerSearch.ts';
import type { EndPose } from './endPoses.ts';
import { cellFor, type GuideGrid } from './firstWays.ts';
import { GoalDistance, type Guide, gridOver } from './goalDistance.ts';
import type { LatticeResult } from './latticeSearch.ts';
import { remembered } from './remembered.ts';

export interface CornerLook {
  readonly candidate?: Candidate;
  /** states expanded by this look */
  readonly expanded: number;
  /** nothing found, and all states that can be reached were expanded */
  readonly emptied: boolean;
}

/**
 * Looks for ways over one lattice of corners, each look with all the ways known before it made dear. Looks for a first way go on where
 * the one before stopped; `mostStates` counts all of them.
 */
export type CornerWays = (known: readonly Candidate[], mostStates: number, watch: Watch) => CornerLook;

/** After so many states without a way, whether the goals are shut in is asked; they are where this many are not reached. */
const SHUT_ASKED_AT = 3_000;
const SHUT_STATES = 300;
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
  const opened = openedFor(space, starts, goals, radiusMm, guideGrid, fineness);
  let first: CornerSearch | undefined;
  let before = 0;
  let isShut = false;
  const firstLook = (mostStates: number, watch: Watch): LatticeResult => {
    first ??= opened();
    const soon = first.run(Math.min(mostStates, SHUT_ASKED_AT), watch);
    if (soon.path !== undefined || soon.emptied || mostStates <= SHUT_ASKED_AT) return soon;
    // A way that gives up clearance is only a guess to be pushed clear: there a long last turn often reaches what seems shut in.
    if (before < SHUT_ASKED_AT && space.offsetMm <= 0)
      isShut = isShutIn(space, starts, goals, radiusMm, fineness, watch);
    return isShut ? { ...soon, emptied: true } : first.run(mostStates, watch);
  };
  return (known, mostStates, watch) => {
    const isFirst = known.length === 0;
    const found = isFirst ? firstLook(mostStates, watch) : opened(wornBy(known, radiusMm)).run(mostStates, watch);
    const { path, start, goal, emptied } = found;
    const expanded = isFirst ? found.expanded - before : found.expanded;
    if (isFirst) before = found.expanded;
    if (path === undefined) return { expanded, emptied };
    const clocks = [(starts[start] as EndPose).clockRad, (goals[goal] as EndPose).clockRad] as const;
    return { candidate: candidateOf(path, ...clocks), expanded, emptied };
  };
}

/** Searches over one lattice, all sharing what is known of its nodes. */
function openedFor(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  guideGrid: GuideGrid,
  fineness: number,
): (dearness?: CornerSearchSetting['dearness']) => CornerSearch {
  const from = starts.map(({ pose }) => pose);
  const to = goals.map(({ pose }) => pose);
  const guide = guideTo(space, to.map(pointOf), guideGrid);
  const name = `lattice ${nameOf(space, to.map(pointOf), guideGrid)} ${radiusMm} ${fineness}`;
  const lattice = remembered(space.field, name, () => latticeFor(space, radiusMm, fineness));
  return (dearness) =>
    new CornerSearch(space, from, to, {
      lattice,
      guide,
      greed: GREED,
      ...(dearness === undefined ? {} : { dearness }),
    });
}

function latticeFor(space: ClearSpace, radiusMm: number, fineness: number): CornerLattice {
  return new CornerLattice(
    space,
    radiusMm,
    gridOver(space.field.bounds, cellFor(space, cornerCellMm(radiusMm, fineness))),
  );
}

/** Led nowhere: for a search that only asks whether there is any way on. */
const NO_GUIDE: Guide = { at: () => 0, leastAt: () => 0 };

/** Whether the goals stand in a place that the lattice leads out of nowhere: seen at once from the goals, never from the starts. */
function isShutIn(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  fineness: number,
  watch: Watch,
): boolean {
  const poses = (ends: readonly EndPose[]): Pose[] => ends.map(({ pose }) => reversedPose(pose));
  const setting = { lattice: latticeFor(space, radiusMm, fineness), guide: NO_GUIDE, greed: GREED };
  return new CornerSearch(turnedRoundSpace(space), poses(goals), poses(starts), setting).run(SHUT_STATES, watch)
    .emptied;
}

/** As `openCornerWays`, but searched from the goals to the starts: quicker where the goals lie deep in something. */
export function openCornerWaysBack(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  guideGrid: GuideGrid,
  fineness: number,
): CornerWays {
  const ways = openCornerWays(turnedRoundSpace(space), back(goals), back(starts), radiusMm, guideGrid, fineness);
  return (known, mostStates, watch) => {
    const look = ways(known.map(seenBack), mostStates, watch);
    return look.candidate === undefined ? look : { ...look, candidate: seenBack(look.candidate) };
  };
}

/** The ends as one sees them who goes the way backwards. */
function back(ends: readonly EndPose[]): EndPose[] {
  return ends.map(({ pose, clockRad }) => ({ pose: reversedPose(pose), clockRad }));
}

function seenBack({ path, fromClockRad, toClockRad }: Candidate): Candidate {
  return candidateOf(reversedPath(path), toClockRad, fromClockRad);
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
