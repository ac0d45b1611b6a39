import type { RandomSource } from '../../base/random.ts';
import type { Watch } from '../../base/watch.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import type { ClearSpace } from './clearSpace.ts';
import type { Budget } from './effort.ts';
import type { EndPose } from './endPoses.ts';
import { type Grid, goalDistances, gridOver, newCellStates } from './goalDistance.ts';
import { type LatticeSetting, latticeSearch } from './latticeSearch.ts';
import { treeSearch } from './treeSearch.ts';

/** The grid on which goal distances are kept, and what its cells hold; one for all searches over one field and offset. */
export interface GuideGrid {
  readonly grid: Grid;
  readonly states: Uint8Array;
}

export interface FirstWay {
  readonly candidate?: Candidate;
  readonly expanded: number;
  /** nothing found, and nothing was left to look at */
  readonly nothingLeft: boolean;
}

/** Sizes as multiples of the least radius, and their limits in mm. */
const GUIDE_CELL_RADII = 0.33;
const GUIDE_CELL_LIMITS_MM = [12, 25] as const;
const LATTICE_LEVELS = [
  { cellRadii: 0.4, stepRadii: 0.55, greed: 1.3 },
  { cellRadii: 0.22, stepRadii: 0.35, greed: 1.2 },
] as const;
const MOST_CELLS = 4e6;

export function guideGridFor(space: ClearSpace, radiusMm: number): GuideGrid {
  const [least, most] = GUIDE_CELL_LIMITS_MM;
  const grid = gridOver(
    space.field.bounds,
    cellFor(space, Math.min(most, Math.max(least, GUIDE_CELL_RADII * radiusMm))),
  );
  return { grid, states: newCellStates(grid) };
}

/**
 * A first clear way from any start to any goal: lattice search, coarse then fine, then trees. Nothing is left to look at
 * when the goals cannot be reached even without a bend limit, or when the fine lattice was emptied.
 */
export function firstWay(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  guideGrid: GuideGrid,
  budget: Pick<Budget, 'latticeStates' | 'treeSteps'>,
  random: RandomSource,
  watch: Watch,
): FirstWay {
  const from = starts.map(({ pose }) => pose);
  const to = goals.map(({ pose }) => pose);
  const places = from.map(({ point }) => point);
  const { grid: guideCells, states } = guideGrid;
  const guide = goalDistances(
    space,
    guideCells,
    states,
    to.map(({ point }) => point),
    places,
  );
  let expanded = 0;
  let emptied = false;
  const answer = (path: Candidate['path'], start: number, goal: number): FirstWay => ({
    candidate: candidateOf(path, (starts[start] as EndPose).clockRad, (goals[goal] as EndPose).clockRad),
    expanded,
    nothingLeft: false,
  });
  for (const { cellRadii, stepRadii, greed } of LATTICE_LEVELS) {
    const setting: LatticeSetting = {
      radiusMm,
      stepMm: stepRadii * radiusMm,
      grid: gridOver(space.field.bounds, cellFor(space, cellRadii * radiusMm)),
      guideGrid: guideCells,
      guide,
      greed,
      mostStates: budget.latticeStates,
    };
    const found = latticeSearch(space, from, to, setting, watch);
    expanded += found.expanded;
    emptied = found.emptied;
    if (found.path) return answer(found.path, found.start, found.goal);
    // No state was reached at all: the goals are walled off even for a hose without a bend limit.
    if (found.expanded === 0) return { expanded, nothingLeft: true };
  }
  const trees = treeSearch(space, from, to, radiusMm, random, budget.treeSteps, watch);
  expanded += trees.steps;
  if (trees.path) return answer(trees.path, trees.start, trees.goal);
  return { expanded, nothingLeft: emptied };
}

/** The wanted cell, or the least that keeps the grid's count of cells in bounds. */
function cellFor(space: ClearSpace, wantedMm: number): number {
  const { min, max } = space.field.bounds;
  const volume = (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
  return Math.max(wantedMm, Math.cbrt(volume / MOST_CELLS));
}
