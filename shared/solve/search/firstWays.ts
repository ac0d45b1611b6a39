import type { RandomSource } from '../../base/random.ts';
import type { Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { type ArcLinePath, type Pose, reversedPath, reversedPose } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, turnedRoundSpace } from './clearSpace.ts';
import type { EndPose } from './endPoses.ts';
import { GoalDistance, type Grid, gridOver, newCellStates } from './goalDistance.ts';
import { type LatticeSetting, latticeSearch } from './latticeSearch.ts';
import { remembered } from './remembered.ts';
import { treeSearch } from './treeSearch.ts';

/** The grid on which goal distances are kept, and what its cells hold; one for all searches over one field and offset. */
export interface GuideGrid {
  readonly grid: Grid;
  readonly states: Uint8Array;
}

export interface FirstWays {
  readonly candidates: readonly Candidate[];
  readonly expanded: number;
  /** proven: nothing joins the ends */
  readonly nothingLeft: boolean;
}

export interface FirstWaysLimits {
  readonly mostStates: number;
  /** stop when so many first ways are known */
  readonly wanted: number;
}

/** Sizes as multiples of the least radius, and their limits in mm. */
const GUIDE_CELL_RADII = 0.4;
const GUIDE_CELL_LIMITS_MM = [12, 28] as const;
const MOST_CELLS = 4e6;

/** What is tried in turn, each turn with four times the states: from either end, on a coarse and a fine lattice, then trees. */
const TURN = [
  { kind: 'lattice', turnedRound: false, cellRadii: 0.4, stepRadii: 0.55, greed: 1.3, fine: false },
  { kind: 'lattice', turnedRound: true, cellRadii: 0.4, stepRadii: 0.55, greed: 1.3, fine: false },
  { kind: 'trees' },
  { kind: 'lattice', turnedRound: false, cellRadii: 0.22, stepRadii: 0.35, greed: 1.2, fine: true },
  { kind: 'lattice', turnedRound: true, cellRadii: 0.22, stepRadii: 0.35, greed: 1.2, fine: true },
] as const;
const FIRST_STATES = 1500;
const STATES_GROWTH = 4;
/** Once a way is known, further ones are looked for with this many times the states that it took, and so many more. */
const LOOK_ON_FACTOR = 2;
const LOOK_ON_STATES = 2000;
/** Trees take this share of the states of a turn: their steps are dearer. */
const TREE_SHARE = 0.5;

export function guideGridFor(space: ClearSpace, radiusMm: number): GuideGrid {
  const [least, most] = GUIDE_CELL_LIMITS_MM;
  return rememberedGrid(space, Math.min(most, Math.max(least, GUIDE_CELL_RADII * radiusMm)), 'as clear or not');
}

/** A grid of about such cells over a space; one for all who judge them alike. judged: how that is. */
export function rememberedGrid(space: ClearSpace, wantedMm: number, judged: string): GuideGrid {
  const cellMm = cellFor(space, wantedMm);
  return remembered(space.field, `grid judged ${judged} ${cellMm} ${space.offsetMm}`, () => {
    const grid = gridOver(space.field.bounds, cellMm);
    return { grid, states: newCellStates(grid) };
  });
}

/**
 * First clear ways, unshortened, from any start to any goal. Lattice searches from either end and trees take turns, each with
 * more states than the turn before: which of them is quick depends on which end is boxed in. Nothing joins
 * the ends when the goals cannot be reached even without a bend limit. A fine lattice that was emptied ends the search, but proves nothing.
 */
export function firstWays(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  { grid, states }: GuideGrid,
  limits: FirstWaysLimits,
  random: RandomSource,
  watch: Watch,
): FirstWays {
  const from = starts.map(({ pose }) => pose);
  const to = goals.map(({ pose }) => pose);
  const toGoals = new GoalDistance(space, grid, states, to.map(pointOf));
  if (from.every(({ point: [x, y, z] }) => toGoals.at(x, y, z) === Number.POSITIVE_INFINITY)) {
    return { candidates: [], expanded: 0, nothingLeft: true };
  }
  let toStarts: GoalDistance | undefined;
  const candidates: Candidate[] = [];
  const emptied = new Set<number>();
  let isEmptied = false;
  let expanded = 0;
  let most = limits.mostStates;
  const keep = (path: ArcLinePath, start: number, goal: number): void => {
    if (candidates.length === 0) most = Math.min(most, expanded * LOOK_ON_FACTOR + LOOK_ON_STATES);
    candidates.push(candidateOf(path, (starts[start] as EndPose).clockRad, (goals[goal] as EndPose).clockRad));
  };
  const isOver = (): boolean => expanded >= most || isEmptied || candidates.length >= limits.wanted;
  for (let mostStates = FIRST_STATES; !isOver(); mostStates *= STATES_GROWTH) {
    for (const [number, stage] of TURN.entries()) {
      if (isOver()) break;
      if (stage.kind === 'trees') {
        const steps = Math.min(most - expanded, Math.ceil(mostStates * TREE_SHARE));
        const trees = treeSearch(space, from, to, radiusMm, random, steps, watch);
        expanded += trees.steps;
        if (trees.path) keep(trees.path, trees.start, trees.goal);
        continue;
      }
      if (emptied.has(number)) continue;
      if (stage.turnedRound) toStarts ??= new GoalDistance(space, grid, states, from.map(pointOf));
      const setting: LatticeSetting = {
        radiusMm,
        stepMm: stage.stepRadii * radiusMm,
        grid: gridOver(space.field.bounds, cellFor(space, stage.cellRadii * radiusMm)),
        guide: stage.turnedRound && toStarts ? toStarts : toGoals,
        greed: stage.greed,
        mostStates: Math.min(mostStates, most - expanded),
      };
      const around = stage.turnedRound ? turnedRoundSpace(space) : space;
      const [a, b] = stage.turnedRound ? [to.map(reversedPose), from.map(reversedPose)] : [from, to];
      const found = latticeSearch(around, a, b, setting, watch);
      expanded += found.expanded;
      if (found.emptied) emptied.add(number);
      if (found.path) {
        if (stage.turnedRound) keep(reversedPath(found.path), found.goal, found.start);
        else keep(found.path, found.start, found.goal);
      } else if (found.emptied && stage.fine) isEmptied = candidates.length === 0;
    }
  }
  return { candidates, expanded, nothingLeft: false };
}

function pointOf({ point }: Pose): Vec3 {
  return point;
}

/** The wanted cell, or the least that keeps the grid's count of cells in bounds. */
export function cellFor(space: ClearSpace, wantedMm: number, mostCells = MOST_CELLS): number {
  const { min, max } = space.field.bounds;
  const volume = (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
  return Math.max(wantedMm, Math.cbrt(volume / mostCells));
}
