import { invariant } from '../../base/invariant.ts';
import { type RandomSource, seededRandom } from '../../base/random.ts';
import { CLEARANCE_PROOF_MM } from '../../base/tolerances.ts';
import { distance } from '../../base/vec3.ts';
import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import { pathEnd } from '../../geometry/arcLinePath.ts';
import type { Candidate } from './candidate.ts';
import { type ClearSpace, clearSpace, type Plug } from './clearSpace.ts';
import { type CornerWays, openCornerWays, openCornerWaysBack } from './cornerWays.ts';
import { shortestDirectConnection } from './directConnections.ts';
import { passSameSides } from './distinctWays.ts';
import { BUDGETS, type Budget } from './effort.ts';
import { clearEndPoses, type EndPose, endPoses, pointOf } from './endPoses.ts';
import { firstWays, type GuideGrid, guideGridFor } from './firstWays.ts';
import { narrowPlaces } from './narrowPlaces.ts';
import { narrowWay, threadedWay } from './narrowWays.ts';
import { nearMiss } from './nearMiss.ts';
import type { SearchProblem, SearchResult, Way } from './problem.ts';
import { provenApart } from './provenApart.ts';
import { provenMargin } from './provenMargin.ts';
import { remembered } from './remembered.ts';
import { shortenByShortcuts } from './shortcut.ts';
import { shorten, shortenByKicks } from './shorten.ts';

/** A direct connection no longer than this many times the straight distance is taken without looking for a shorter way. */
const DIRECT_IS_SHORT = 1.25;
/** When all of the usual clocks of an end are blocked, this many times as many are tried before the end is called blocked. */
const FINER_CLOCKS = 8;

/** A search with plugs may spend one part in so many of the whole: mostly there is no other way. */
const PLUGGED_SHARE = 8;

/** A look for another way on the lattice of corners may spend so many times what the first took, and so many states more. */
const LOOK_ON_FACTOR = 0.5;
const LOOK_ON_STATES = 4_000;

/** States of the first looks over a lattice, from either end: mostly there is a way then, or one of the ends is shut in. */
const FIRST_LOOK_STATES = 12_000;

const ENDS = ['from', 'to'] as const;

/** Cells of the lattice of corners are tried as coarse as they come, then of half the size. */
const CORNER_FINENESS = { coarse: 1, fine: 2 } as const;

interface Setting {
  readonly problem: SearchProblem;
  readonly space: ClearSpace;
  readonly budget: Budget;
  readonly starts: readonly EndPose[];
  readonly goals: readonly EndPose[];
  readonly guideGrid: GuideGrid;
  readonly random: RandomSource;
  readonly watch: Watch;
}

/**
 * Finds up to `problem.ways` clear ways of bounded curvature from one end to the other, shortest first. Frame and units:
 * bay frame, mm, rad. Method: direct connections; else lattice search, then trees; each way is shortened; further ways are
 * looked for with the narrow places of earlier ones plugged. The ways are arcs and straights of at least `minRadiusMm`, proven
 * clear to CLEARANCE_PROOF_MM; their lengths are upper bounds, not proven least. All limits are counts: the same problem and
 * seed give the same answer on every host. Throws Cancelled when the watch says so.
 */
export function searchWays(problem: SearchProblem, watch: Watch): SearchResult {
  invariant(problem.minRadiusMm > 0, `searchWays: minRadiusMm must be above 0, got ${problem.minRadiusMm}`);
  invariant(problem.field.lipschitz >= 1, `searchWays: lipschitz must be at least 1, got ${problem.field.lipschitz}`);
  stopIfCancelled(watch);
  const budget = BUDGETS[problem.effort];
  const { field, fall, noCrest } = problem;
  const exact = clearSpace({ field, fall, noCrest });
  // The proof of clearness may fall short by CLEARANCE_PROOF_MM: where the ends allow it, that much is held in hand.
  const inHand = clearSpace(exact, { offsetMm: -CLEARANCE_PROOF_MM });
  const canHold = ENDS.every((end) => standingPoses(inHand, problem, end, budget).length > 0);
  const space = canHold ? inHand : exact;
  const starts = standingPoses(space, problem, 'from', budget);
  const goals = standingPoses(space, problem, 'to', budget);
  if (starts.length === 0 || goals.length === 0) {
    const outcome = starts.length === 0 ? 'start-blocked' : 'goal-blocked';
    return { outcome, ways: [], ...missOf(problem, watch) };
  }
  const random = seededRandom(problem.seed);
  const guideGrid = guideGridFor(space, problem.minRadiusMm);
  const setting: Setting = { problem, space, budget, starts, goals, guideGrid, random, watch };
  return search(setting);
}

function missOf(problem: SearchProblem, watch: Watch): ReturnType<typeof nearMiss> {
  return problem.withoutNearMiss === true ? { expanded: 0 } : nearMiss(problem, watch);
}

function search(setting: Setting): SearchResult {
  const { problem, budget, watch } = setting;
  const { first, taken } = begunFor(setting);
  if (first.candidates.length === 0) {
    const outcome = first.nothingLeft ? 'no-way-found' : 'exhausted';
    const miss = missOf(problem, partOf(watch, 0.5, 1));
    return { outcome, ways: [], ...miss, expanded: first.expanded + miss.expanded };
  }
  const ways = [...taken];
  let { expanded } = first;
  const corners = first.corners ?? (first.isShort ? cornersFor(setting) : undefined);
  const looks = Math.max(first.isShort ? 0 : budget.looksForShorter, budget.plugsPerWay * (problem.ways - 1));
  for (let look = 0; look < looks; look++) {
    const enough = ways.length >= problem.ways && (first.isShort || look >= budget.looksForShorter);
    if (enough) break;
    watch.report({ fraction: 0.5 + (0.5 * look) / looks, doing: 'Looking for other ways' });
    const other = corners ? otherCornerWay(setting, ways, corners, first.expanded) : otherWay(setting, ways, look);
    expanded += other.expanded;
    if (other.candidate) ways.splice(0, ways.length, ...distinct(setting, [...ways, other.candidate]));
  }
  const [shortest] = ways;
  if (shortest && !first.isTaut) ways[0] = kickedFor(setting, shortest);
  return {
    outcome: 'found',
    ways: ways.slice(0, problem.ways).map((candidate) => proven(setting, candidate)),
    expanded,
  };
}

/** What a search begins with, whether it wants one way or several. */
interface Begun {
  readonly first: First;
  /** the first ways made short, distinct, shortest first */
  readonly taken: readonly Candidate[];
}

/** Begun once over a field, with its own random numbers: a search for several ways goes on from the one for the shortest. */
function begunFor(setting: Setting): Begun {
  return rememberedFor(setting, 'begun', () => {
    const own = { ...setting, random: seededRandom(setting.problem.seed) };
    own.watch.report({ fraction: 0, doing: 'Looking for a way' });
    const first = bestFirstCandidate(own);
    own.watch.report({ fraction: 0.4, doing: 'Shortening' });
    const short = first.isTaut ? first.candidates : first.candidates.map((candidate) => shortened(own, candidate));
    return { first, taken: distinct(own, short) };
  });
}

/** Added to a search's seed, so that its kicks go by other numbers than what they kick out of. */
const KICKS_SEED = 0x51ed;

/** A way kicked shorter, with its own random numbers; once over a field, since mostly no other way turns out to be shorter. */
function kickedFor(setting: Setting, shortest: Candidate): Candidate {
  const { space, problem, budget, watch } = setting;
  return rememberedFor(setting, `kicked ${JSON.stringify(shortest)}`, () =>
    shortenByKicks(space, problem, shortest, budget, seededRandom(problem.seed + KICKS_SEED), watch),
  );
}

function rememberedFor<T>({ problem, space, starts, goals }: Setting, what: string, make: () => T): T {
  const { seed, effort, minRadiusMm, field, fall, noCrest } = problem;
  const asked = JSON.stringify([seed, effort, minRadiusMm, space.offsetMm, fall, noCrest, starts, goals]);
  return remembered(field, `${what} ${asked}`, make);
}

/** Clear poses of an end at the usual clocks; at finer ones when all of those are blocked. */
function standingPoses(space: ClearSpace, problem: SearchProblem, end: 'from' | 'to', budget: Budget): EndPose[] {
  const usual = clearEndPoses(space, problem[end], endPoses(problem[end], budget.clocks));
  if (usual.length > 0 || problem[end].kind === 'held') return usual;
  return clearEndPoses(space, problem[end], endPoses(problem[end], FINER_CLOCKS * budget.clocks));
}

interface First {
  readonly candidates: readonly Candidate[];
  readonly expanded: number;
  readonly nothingLeft: boolean;
  /** hardly longer than the shortest connection as if nothing stood in the way */
  readonly isShort: boolean;
  /** between held ends, the shortest connection as if nothing stood in the way: it cannot be shortened */
  readonly isTaut?: boolean;
  /** the lattice of corners on which the first way was found */
  readonly corners?: CornerWays;
}

function bestFirstCandidate(setting: Setting): First {
  const { problem, space, starts, goals, budget, guideGrid, random, watch } = setting;
  const direct = shortestDirectConnection(space, starts, goals, problem.minRadiusMm);
  if (direct) {
    const { path, lengthMm } = direct.candidate;
    const isShort = direct.isShortest || lengthMm <= DIRECT_IS_SHORT * distance(path.start.point, pathEnd(path).point);
    const isTaut = direct.isShortest && ENDS.every((end) => problem[end].kind === 'held');
    if (isShort) return { candidates: [direct.candidate], expanded: 0, nothingLeft: false, isShort, isTaut };
  }
  const isApart = (): boolean => {
    const [from, to] = [starts.map(pointOf), goals.map(pointOf)];
    const asked = `apart ${JSON.stringify([space.offsetMm, from, to])}`;
    return remembered(space.field, asked, () => provenApart(space, from, to, watch));
  };
  if (direct === undefined && isApart()) return { candidates: [], expanded: 0, nothingLeft: true, isShort: false };
  const looksIntoNarrow = direct === undefined ? budget.looksIntoNarrow : 'not';
  const { minRadiusMm } = problem;
  const mostStates = space.fall === undefined ? budget.lastStates : budget.mostStates;
  const limits = { mostStates, wanted: budget.firstWays };
  const narrowLimits = { lastStates: budget.lastBentStates, exploringStates: budget.exploringStates };
  const coarse = bothWays(setting, CORNER_FINENESS.coarse);
  const fine = bothWays(setting, CORNER_FINENESS.fine);
  // What mostly finds a way comes first; the line through a tube costs less than a finer lattice.
  const looks: readonly (() => First)[] = [
    () => coarse.ahead(FIRST_LOOK_STATES),
    ...(looksIntoNarrow === 'not' ? [] : [() => firstOf(threadedWay(space, starts, goals, minRadiusMm, watch))]),
    () => coarse.back(FIRST_LOOK_STATES),
    () => fine.back(FIRST_LOOK_STATES),
    () => fine.ahead(FIRST_LOOK_STATES),
    ...(looksIntoNarrow === 'thoroughly'
      ? [() => firstOf(narrowWay(space, starts, goals, minRadiusMm, narrowLimits, watch))]
      : []),
    () => coarse.ahead(budget.cornerStates),
    () => fine.ahead(budget.fineCornerStates),
    () => ({
      ...firstWays(space, starts, goals, problem.minRadiusMm, guideGrid, limits, random, watch),
      isShort: false,
    }),
  ];
  const first = firstThatFinds(looks);
  return direct === undefined ? first : withDirect(first, direct.candidate);
}

/** What the first look that finds something answers, with the work of those before it counted in; else what the last one answers. */
function firstThatFinds(looks: readonly (() => First)[]): First {
  let expanded = 0;
  let answer = firstOf({ expanded: 0 });
  for (const look of looks) {
    answer = look();
    expanded += answer.expanded;
    if (answer.candidates.length > 0) break;
  }
  return { ...answer, expanded };
}

function firstOf({ candidate, expanded }: { readonly candidate?: Candidate; readonly expanded: number }): First {
  return { candidates: candidate ? [candidate] : [], expanded, nothingLeft: false, isShort: false };
}

function withDirect(first: First, direct: Candidate): First {
  return { ...first, candidates: [direct, ...first.candidates] };
}

/** The lattice of corners of a fineness. A drain's gentle fall lies between its headings: undefined for drains. */
function cornersFor(
  setting: Setting,
  fineness: number = CORNER_FINENESS.coarse,
  open: typeof openCornerWays = openCornerWays,
): CornerWays | undefined {
  const { problem, space, starts, goals, guideGrid } = setting;
  if (space.fall !== undefined) return undefined;
  return open(space, starts, goals, problem.minRadiusMm, guideGrid, fineness);
}

/** Looks over a lattice from either end. */
interface BothWays {
  readonly ahead: (mostStates: number) => First;
  readonly back: (mostStates: number) => First;
}

/** Where all that can be reached from one end was looked at, neither end is looked from again. */
function bothWays(setting: Setting, fineness: number): BothWays {
  const { budget, watch } = setting;
  const most = fineness === CORNER_FINENESS.coarse ? budget.cornerStates : budget.fineCornerStates;
  let isEmptied = false;
  const lookOver = (open: typeof openCornerWays): ((mostStates: number) => First) => {
    let corners: CornerWays | undefined;
    return (mostStates) => {
      if (isEmptied) return firstOf({ expanded: 0 });
      corners ??= cornersFor(setting, fineness, open);
      if (corners === undefined) return firstOf({ expanded: 0 });
      const look = corners([], Math.min(mostStates, most), watch);
      isEmptied = look.emptied;
      return look.candidate ? { ...firstOf(look), corners } : firstOf(look);
    };
  };
  return { ahead: lookOver(openCornerWays), back: lookOver(openCornerWaysBack) };
}

function shortened({ space, problem, budget, random, watch }: Setting, candidate: Candidate): Candidate {
  return shorten(space, problem, candidate, budget, random, watch);
}

/** Shortest first; of candidates that pass the same sides only the shortest is kept. */
function distinct({ space }: Setting, candidates: readonly Candidate[]): Candidate[] {
  const kept: Candidate[] = [];
  for (const candidate of [...candidates].sort((a, b) => a.lengthMm - b.lengthMm)) {
    if (!kept.some((other) => passSameSides(space, other.path, candidate.path))) kept.push(candidate);
  }
  return kept;
}

/** A look over the same lattice with the ways known so far made dear: on another side of things, or the same way shorter. */
function otherCornerWay(
  setting: Setting,
  ways: readonly Candidate[],
  corners: CornerWays,
  firstExpanded: number,
): Other {
  const states = Math.min(setting.budget.cornerStates, LOOK_ON_STATES + LOOK_ON_FACTOR * firstExpanded);
  const { candidate, expanded } = corners(ways, states, setting.watch);
  return { expanded, ...(candidate && { candidate: shortened(setting, candidate) }) };
}

interface Other {
  readonly candidate?: Candidate;
  readonly expanded: number;
}

/** A search with a narrow place of each way known so far plugged: which place, and how wide a plug, goes by the attempt. */
function otherWay(setting: Setting, ways: readonly Candidate[], attempt: number): Other {
  const { problem, space, budget, guideGrid, random, watch } = setting;
  const plugs = ways.flatMap((way) => plugOn(setting, way, attempt));
  const plugged = clearSpace(space, { plugs });
  const starts = clearEndPoses(plugged, problem.from, setting.starts);
  const goals = clearEndPoses(plugged, problem.to, setting.goals);
  if (plugs.length === 0 || starts.length === 0 || goals.length === 0) return { expanded: 0 };
  const limits = { mostStates: budget.mostStates / PLUGGED_SHARE, wanted: 1 };
  const found = firstWays(plugged, starts, goals, problem.minRadiusMm, guideGrid, limits, random, watch);
  const [first] = found.candidates;
  if (!first) return { expanded: found.expanded };
  // Shortened first with the plugs in place, so that it does not slip back to the way it was to avoid.
  const apart = shortenByShortcuts(plugged, problem, first, random, budget.shortcutFailures, watch);
  return { candidate: shortened(setting, apart), expanded: found.expanded };
}

/** The way's places of least margin, away from its ends, in order; the attempt chooses among them and the plug's width. */
function plugOn({ problem, space }: Setting, way: Candidate, attempt: number): Plug[] {
  const places = narrowPlaces(space, way.path, problem.minRadiusMm);
  if (places.length === 0) return [];
  const centre = places[attempt % places.length];
  const radiusMm = problem.minRadiusMm * (1 + 0.5 * attempt);
  return centre ? [{ centre, radiusMm }] : [];
}

function proven({ problem }: Setting, { path, lengthMm, fromClockRad, toClockRad }: Candidate): Way {
  const { atLeastMm } = provenMargin(clearSpace({ field: problem.field }), path);
  invariant(atLeastMm >= -2 * CLEARANCE_PROOF_MM, `searchWays: a way checked clear has margin ${atLeastMm}`);
  return { path, lengthMm, fromClockRad, toClockRad, leastMarginMm: atLeastMm };
}
