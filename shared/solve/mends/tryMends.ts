import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Finding } from '../../document/lay/schema.ts';
import type { MendAnswer, NearMend } from '../../document/mends/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { CheckName } from '../../document/wording/findingWords.ts';
import { runChecks } from '../checks/index.ts';
import { shareWatch } from '../layRuns/shareWatch.ts';
import { otherAngles, otherPairs } from './endProposals.ts';
import { inTurn, proposedFor } from './inTurn.ts';
import { laidAsMisses, laidQuickly, type QuickLay, saying } from './laidQuickly.ts';
import { type Candidate, candidateOf, type MendBench, type Work } from './mendWork.ts';
import { nearestOf, nearMends, worthNearing } from './nearMends.ts';
import type { Proposal } from './proposal.ts';
import { PROPOSERS } from './proposers.ts';
import { secondSteps } from './secondSteps.ts';
import { answerOf, byWorth, type MendTry, MOST_SETTLED, settle, worthSettling } from './settleMends.ts';

export interface TriedMends {
  readonly aimedAt: readonly Finding[];
  readonly tried: number;
  readonly answers: readonly MendAnswer[];
  /** where something that is to be mended has no answer: what comes nearest */
  readonly nearest: readonly NearMend[];
}

/** How many changes are laid at most, and on how many of those that do not cure all of it a second one is put. */
const MOST_TRIED = 32;
const MOST_BASES = 2;

/**
 * Lays a run with each change that may mend what forbids cutting it or is to be looked at (`PROPOSERS`), and answers
 * those that cure a finding and bring none that is new, graver or further beyond its limit, on this run or another; what cures something
 * that forbids cutting may bring what is to be looked at, and says so. checks: only their findings are to be mended; absent = all. Each
 * change is first laid quickly, and dropped where it does not lie clean; the best are then laid, measured and checked as laying the
 * project with that change does. Where no single change cures what forbids cutting without bringing anything, pairs of ends are tried;
 * where these leave anything, changes with which a near miss stays one. Where something still has no answer, a few second changes
 * on top of those that came nearest (`secondSteps`), and the nearest are told with what they lack. Order: fewest findings left that
 * forbid cutting, then that are to be looked at, then the least change for the builder, then the least change of the cut length.
 * Counts limit the work, never time, so the same input gives the same answer.
 */
export async function tryMends(
  bench: MendBench,
  run: ResolvedRun,
  checks: readonly string[] | undefined,
  watch: Watch,
): Promise<TriedMends> {
  const before = runChecks(bench.resolved, bench.lays, bench.today);
  const aimedAt = before.filter(
    (f) => f.run === run.run.id && f.severity !== 'note' && (checks === undefined || checks.includes(f.check)),
  );
  const lay = bench.lays.find((l) => l.run === run.run.id);
  if (lay === undefined || aimedAt.length === 0) return { aimedAt, tried: 0, answers: [], nearest: [] };
  const work: Work = { bench, run, lay, before, aimedAt };
  const { singles, pairs } = await tryClean(work, partOf(watch, 0, 0.5));
  const clean = [...singles.settled, ...pairs.settled];
  const missed =
    isFreed(work, clean) && uncuredBy(work, clean).length === 0
      ? NOTHING_TRIED
      : await tryMisses(work, singles, partOf(watch, 0.5, 0.7));
  const further = await tryFurther(work, together(singles, pairs, missed), partOf(watch, 0.7, 1));
  const all = together(singles, pairs, missed, further);
  return {
    aimedAt,
    tried: all.count,
    answers: answersOf(work, all.settled).toSorted(byWorth),
    nearest: nearMends(work, refused(work, all.settled), uncuredBy(work, all.settled)),
  };
}

/** What was tried: how many changes, those that lie, those that do not, and those that were laid to the end. */
interface Tried {
  readonly count: number;
  readonly quick: readonly QuickLay[];
  readonly unlaid: readonly Candidate[];
  readonly settled: readonly MendTry[];
}

const NOTHING_TRIED: Tried = { count: 0, quick: [], unlaid: [], settled: [] };

function together(...all: readonly Tried[]): Tried {
  return {
    count: all.reduce((sum, one) => sum + one.count, 0),
    quick: all.flatMap((one) => one.quick),
    unlaid: all.flatMap((one) => one.unlaid),
    settled: all.flatMap((one) => one.settled),
  };
}

/** Single changes that lie clean; where none of them frees the run, pairs of ends. */
async function tryClean(work: Work, watch: Watch): Promise<{ readonly singles: Tried; readonly pairs: Tried }> {
  const { bench, run, aimedAt } = work;
  const singles = await tryAll(work, proposalsFor(work), partOf(watch, 0, 0.7));
  const mayTurnBoth = aimedAt.some((f) => PROPOSERS[f.check as CheckName]?.includes(otherAngles) === true);
  const isStopped = aimedAt.some((f) => f.severity === 'stop') && !isFreed(work, singles.settled);
  const pairs =
    isStopped && mayTurnBoth
      ? await tryAll(work, otherPairs({ run, tables: bench.tables }), partOf(watch, 0.7, 1))
      : NOTHING_TRIED;
  return { singles, pairs };
}

/** Single changes of a near miss that leave it one, as many to the end as single changes that lie clean have left. */
async function tryMisses(work: Work, { unlaid, settled: clean }: Tried, watch: Watch): Promise<Tried> {
  const quick = await laidAsMisses(work, unlaid, partOf(watch, 0, 0.6));
  const chosen = worthSettling(work, quick).slice(0, Math.max(0, MOST_SETTLED - clean.length));
  const settled = await settleAll(work, chosen, partOf(watch, 0.6, 1));
  return { ...NOTHING_TRIED, quick, settled };
}

function answersOf(work: Work, settled: readonly MendTry[]): MendAnswer[] {
  return settled.flatMap((one) => answerOf(work, one) ?? []);
}

function refused(work: Work, settled: readonly MendTry[]): MendTry[] {
  return settled.filter((one) => answerOf(work, one) === undefined);
}

/** Whether one of these changes leaves nothing that forbids cutting, and brings nothing for it. */
function isFreed(work: Work, settled: readonly MendTry[]): boolean {
  return answersOf(work, settled).some(({ stopsLeft, brings }) => stopsLeft === 0 && brings === undefined);
}

/** What is to be mended and has no answer yet. */
function uncuredBy(work: Work, settled: readonly MendTry[]): Finding[] {
  const answers = answersOf(work, settled);
  return work.aimedAt.filter((finding) => !answers.some(({ cured }) => cured.some((c) => c.finding === finding)));
}

/** What came nearest laid to the end, and second changes on top of the best of that and of what cures only a part. Nothing where everything has an answer. */
async function tryFurther(work: Work, sofar: Tried, watch: Watch): Promise<Tried> {
  const uncured = uncuredBy(work, sofar.settled);
  if (uncured.length === 0) return NOTHING_TRIED;
  const fresh = sofar.quick.filter(({ proposal }) => sofar.settled.every((one) => one.proposal !== proposal));
  const settled = await settleAll(work, worthNearing(work, fresh, uncured), partOf(watch, 0, 0.3));
  const bases = nearestOf(work, [...sofar.settled, ...settled], uncured).slice(0, MOST_BASES);
  const seconds = inTurn(bases.map((base) => secondSteps(work.bench.tables, base)));
  const second = await tryAll(work, seconds, partOf(watch, 0.3, 1));
  return together({ ...NOTHING_TRIED, settled }, second);
}

/** What each finding asks for in turn. */
function proposalsFor({ bench, run, lay, aimedAt }: Work): Proposal[] {
  return inTurn(aimedAt.map((finding) => proposedFor({ tables: bench.tables, run, lay, finding })));
}

async function tryAll(work: Work, proposals: readonly Proposal[], watch: Watch): Promise<Tried> {
  const candidates = proposals.flatMap((proposal) => candidateOf(work, proposal) ?? []).slice(0, MOST_TRIED);
  const quick = await laidQuickly(work, candidates, partOf(watch, 0, 0.6));
  const settled = await settleAll(work, worthSettling(work, quick), partOf(watch, 0.6, 1));
  const unlaid = candidates.filter(({ proposal }) => quick.every((one) => one.proposal !== proposal));
  return { count: candidates.length, quick, unlaid, settled };
}

/** All of them at once, as far as there is a crew to lay them; in their order. */
async function settleAll(work: Work, chosen: readonly QuickLay[], watch: Watch): Promise<MendTry[]> {
  const shared = shareWatch(watch, chosen.length);
  const settled = chosen.map(async (one, i) => {
    stopIfCancelled(watch);
    const part = saying(shared(i), one.proposal.words);
    part.report({ fraction: 0, doing: one.proposal.words });
    return settle(work, one, part);
  });
  return (await Promise.all(settled)).flatMap((done) => done ?? []);
}
