import type { Watch } from '../../base/watch.ts';
import { samplePath } from '../../geometry/arcLinePath.ts';
import { type BentLimits, type BentLook, bentWays } from './bentWays.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, clearSpace } from './clearSpace.ts';
import { openCornerWays } from './cornerWays.ts';
import type { EndPose } from './endPoses.ts';
import { FineGrid } from './fineGrid.ts';
import { guideGridFor } from './firstWays.ts';
import { pushClear } from './pushClear.ts';
import { threadWays } from './threadWays.ts';

export interface NarrowWay {
  readonly candidate?: Candidate;
  readonly expanded: number;
}

/** mm. Cells of the fine grid, and of another, on which lines run otherwise. */
const CELL_MM = 4;
const OTHER_CELL_MM = 6;
/** mm of clearance given up for a first guess, and how fine its lattice is. */
const GUESS = { offsetMm: 8, fineness: 2 } as const;
/** Guesses tried on one lattice, each with the ones before it made dear. */
const LOOKS = 3;
const LOOK_STATES = 25_000;
/** Lines tried through a fine grid, and then through another, and the cells they may open. */
const THREADS = {
  first: { attempts: 2, mostCells: 100_000 },
  other: { attempts: 4, mostCells: 100_000 },
} as const;
/** Lines that bend as a hose does: how their guide sees the bay, at first and after all else, and what they may cost. */
const ROUGH_GUIDES = { cellMm: 10, looksForPlaces: false } as const;
const SHARP_GUIDES = { cellMm: 8, looksForPlaces: true } as const;
const FIRST_BENT = { attempts: 4, mostStates: 8_000 } as const;
const LAST_ATTEMPTS = 8;
/** How much finer steps are where those of the usual length found nothing, and how much sharper bends may be in the end. */
const FINER = 1.5;
const SHARPER = 0.95;
/** Of what the last lines may cost: those with finer steps and sharper bends, each state of which is four times as dear. */
const SHARPER_SHARE = 0.25;
/** Lines that explore, when all others have failed: how they are looked for in turn, how many, and what one may cost. */
const EXPLORING_LOOKS = [
  { guides: ROUGH_GUIDES, fineness: 1, radiusShare: 1, explores: true },
  { guides: SHARP_GUIDES, fineness: 1, radiusShare: 0.95, explores: true },
  { guides: ROUGH_GUIDES, fineness: 1, radiusShare: 0.9, explores: true },
  { guides: SHARP_GUIDES, fineness: 1, radiusShare: 1, explores: true },
  { guides: ROUGH_GUIDES, fineness: 1, radiusShare: 0.95, explores: true },
  { guides: SHARP_GUIDES, fineness: 1, radiusShare: 0.9, explores: true },
] as const;
const EXPLORING_STATES = 30_000;
const EXPLORING_ATTEMPTS = 24;
/** Cells of the fine grid opened in the time that a state of a lattice takes. */
const CELLS_A_STATE = 10;
const GUESS_STEP_RADII = 0.1;

/**
 * A way along a line through a fine grid, pushed clear: finds at once what leads through a tube, and is cheap enough to be tried before
 * a lattice is made finer.
 */
export function threadedWay(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  watch: Watch,
): NarrowWay {
  return threaded(space, new FineGrid(space, CELL_MM), starts, goals, radiusMm, THREADS.first, watch);
}

/**
 * A way through places too narrow for any lattice: one of several lines, or a way that gives up some clearance, pushed clear. lastStates:
 * what lines that bend as a hose does may cost after all else; sharper ones may cost a quarter more. exploringStates: what those that
 * explore may cost when none of these is found.
 */
export function narrowWay(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  { lastStates, exploringStates }: { readonly lastStates: number; readonly exploringStates: number },
  watch: Watch,
): NarrowWay {
  const other = new FineGrid(space, OTHER_CELL_MM);
  const bent = (
    looks: readonly Omit<BentLook, 'mostStates'>[],
    limits: BentLimits,
    each = limits.mostStates,
  ): NarrowWay => {
    const limited = looks.map((look) => ({ ...look, mostStates: each }));
    return bentWays(space, limited, starts, goals, radiusMm, limits, watch);
  };
  const last = { attempts: LAST_ATTEMPTS, mostStates: lastStates };
  const sharper = { attempts: LAST_ATTEMPTS, mostStates: SHARPER_SHARE * lastStates };
  const exploring = { attempts: EXPLORING_ATTEMPTS, mostStates: exploringStates };
  const looks: readonly (() => NarrowWay)[] = [
    () => bent([{ guides: ROUGH_GUIDES, fineness: 1, radiusShare: 1, explores: false }], FIRST_BENT),
    () => bent([{ guides: ROUGH_GUIDES, fineness: FINER, radiusShare: 1, explores: false }], FIRST_BENT),
    () => threaded(space, other, starts, goals, radiusMm, THREADS.other, watch),
    () => pushedGuess(space, starts, goals, radiusMm, watch),
    () => bent([{ guides: SHARP_GUIDES, fineness: 1, radiusShare: 1, explores: false }], last),
    () => bent([{ guides: ROUGH_GUIDES, fineness: FINER, radiusShare: SHARPER, explores: false }], sharper),
    () => bent(EXPLORING_LOOKS, exploring, EXPLORING_STATES),
  ];
  let expanded = 0;
  for (const look of looks) {
    const found = look();
    expanded += found.expanded;
    if (found.candidate) return { candidate: found.candidate, expanded };
  }
  return { expanded };
}

function threaded(
  space: ClearSpace,
  fine: FineGrid,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  limits: (typeof THREADS)[keyof typeof THREADS],
  watch: Watch,
): NarrowWay {
  const { candidate, cells } = threadWays(space, fine, starts, goals, radiusMm, limits, watch);
  const expanded = Math.ceil(cells / CELLS_A_STATE);
  return candidate ? { candidate, expanded } : { expanded };
}

function pushedGuess(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  watch: Watch,
): NarrowWay {
  const relaxed = clearSpace(space, { offsetMm: space.offsetMm + GUESS.offsetMm });
  const corners = openCornerWays(relaxed, starts, goals, radiusMm, guideGridFor(relaxed, radiusMm), GUESS.fineness);
  const guesses: Candidate[] = [];
  let expanded = 0;
  for (let look = 0; look < LOOKS; look++) {
    const found = corners(guesses, LOOK_STATES, watch);
    expanded += found.expanded;
    if (!found.candidate) break;
    guesses.push(found.candidate);
    const start = endAt(starts, found.candidate.fromClockRad);
    const goal = endAt(goals, found.candidate.toClockRad);
    const line = samplePath(found.candidate.path, GUESS_STEP_RADII * radiusMm).map(({ point }) => point);
    const { path } = pushClear(space, start.pose, goal.pose, line, radiusMm, watch);
    if (path) return { candidate: candidateOf(path, start.clockRad, goal.clockRad), expanded };
  }
  return { expanded };
}

function endAt(ends: readonly EndPose[], clockRad: number): EndPose {
  return ends.find((end) => end.clockRad === clockRad) ?? (ends[0] as EndPose);
}
