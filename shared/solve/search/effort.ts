import type { Effort } from './problem.ts';

/** What a search may spend, all as counts, so that the answer is the same on every host. */
export interface Budget {
  /** clocks tried round a turning end */
  readonly clocks: number;
  /** states of one lattice search */
  readonly latticeStates: number;
  /** growth steps of one pair of trees */
  readonly treeSteps: number;
  /** shortcuts tried in a row without gain before a path counts as short */
  readonly shortcutFailures: number;
  /** rounds over all corners of a path when it is drawn tight */
  readonly cornerRounds: number;
  /** further searches with earlier ways plugged, for each further way wanted */
  readonly plugsPerWay: number;
}

export const BUDGETS: Record<Effort, Budget> = {
  quick: { clocks: 8, latticeStates: 8_000, treeSteps: 4_000, shortcutFailures: 60, cornerRounds: 20, plugsPerWay: 1 },
  normal: {
    clocks: 12,
    latticeStates: 30_000,
    treeSteps: 12_000,
    shortcutFailures: 120,
    cornerRounds: 60,
    plugsPerWay: 2,
  },
  thorough: {
    clocks: 24,
    latticeStates: 150_000,
    treeSteps: 60_000,
    shortcutFailures: 400,
    cornerRounds: 200,
    plugsPerWay: 3,
  },
};
