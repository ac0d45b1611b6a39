import type { Effort } from './problem.ts';

/** What a search may spend, all as counts, so that the answer is the same on every host. */
export interface Budget {
  /** clocks tried round a turning end; as many for quick as for normal, so that both are led by the same guide */
  readonly clocks: number;
  /** states expanded in looking for first ways where the lattice of corners cannot be used: for drains */
  readonly mostStates: number;
  /** states expanded in looking once more where the lattice of corners and the look into narrow places found nothing */
  readonly lastStates: number;
  /** states expanded by one look over the lattice of corners: each costs about a tenth of those above */
  readonly cornerStates: number;
  /** the same for a look over the lattice of half the cells, which seldom finds what the coarser one does not */
  readonly fineCornerStates: number;
  /** first ways looked for, of which the shortest is kept */
  readonly firstWays: number;
  /** shortcuts tried in a row without gain before a path counts as short */
  readonly shortcutFailures: number;
  /** rounds over all corners of a path when it is drawn tight */
  readonly cornerRounds: number;
  /** kicks aside in a row without gain before the shortest way counts as short */
  readonly kicks: number;
  /** further searches with earlier ways plugged, for each further way wanted */
  readonly plugsPerWay: number;
  /** searches with earlier ways plugged, in the hope of a shorter one, when only one way is wanted */
  readonly looksForShorter: number;
  /**
   * how places too narrow for the lattices are looked into when those find nothing: by one line through a fine grid, or also by
   * more lines and by ways that give up clearance
   */
  readonly looksIntoNarrow: 'not' | 'by a line' | 'thoroughly';
  /** states that lines which bend as a hose does may cost after all else, where it is looked thoroughly */
  readonly lastBentStates: number;
  /** states that lines which explore may cost when those found nothing either */
  readonly exploringStates: number;
}

const QUICK: Budget = {
  clocks: 12,
  mostStates: 12_000,
  lastStates: 4_000,
  cornerStates: 70_000,
  fineCornerStates: 12_000,
  firstWays: 1,
  shortcutFailures: 60,
  cornerRounds: 30,
  kicks: 15,
  plugsPerWay: 1,
  looksForShorter: 0,
  looksIntoNarrow: 'by a line',
  lastBentStates: 0,
  exploringStates: 0,
};

export const BUDGETS: Record<Effort, Budget> = {
  glance: {
    clocks: 8,
    mostStates: 4_000,
    lastStates: 1_000,
    cornerStates: 2_500,
    fineCornerStates: 1_500,
    firstWays: 1,
    shortcutFailures: 30,
    cornerRounds: 10,
    kicks: 0,
    plugsPerWay: 0,
    looksForShorter: 0,
    looksIntoNarrow: 'not',
    lastBentStates: 0,
    exploringStates: 0,
  },
  quick: QUICK,
  unkicked: { ...QUICK, kicks: 0 },
  normal: {
    clocks: 12,
    mostStates: 30_000,
    lastStates: 10_000,
    cornerStates: 40_000,
    fineCornerStates: 24_000,
    firstWays: 3,
    shortcutFailures: 100,
    cornerRounds: 60,
    kicks: 30,
    plugsPerWay: 2,
    looksForShorter: 1,
    looksIntoNarrow: 'thoroughly',
    lastBentStates: 36_000,
    exploringStates: 100_000,
  },
};
