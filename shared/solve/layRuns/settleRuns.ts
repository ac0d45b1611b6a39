import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { type Bench, layEach } from './bench.ts';
import { type RunLaid, withoutConflicts } from './conflicts.ts';

/** What a round came to: runs that lie now are among the laid ones. */
export interface Round {
  /** runs whose way was taken by one that lies now, or that wait for a hose of their bundle: for the next round */
  readonly open: readonly ResolvedRun[];
  /** how each run lies that was laid in it */
  readonly tried: readonly RunLaid[];
  /** those that are not clean */
  readonly failed: readonly RunLaid[];
}

/**
 * One round: every run is laid among the laid ones as if the others of the round were not there; those that lie clean
 * and can all stay are taken in. A run that goes beside hoses of its bundle comes after those that stand before it in the
 * order. Changes `laid`.
 */
export async function settleRound(
  bench: Bench,
  laid: Map<string, Lay>,
  runs: readonly ResolvedRun[],
  how: 'as-asked' | 'beside',
  watch: Watch,
): Promise<Round> {
  const ready = runs.filter((run, i) => !runs.slice(0, i).some((before) => areMates(bench, before, run)));
  const lays = await layEach(bench, ready, how, laid, watch, (name) => `laying ${name}`);
  const tried = ready.map((run, i): RunLaid => ({ run, lay: lays[i] as Lay }));
  const stay = withoutConflicts(
    bench,
    tried.filter(({ lay }) => lay.outcome === 'laid'),
  );
  for (const { lay } of stay) laid.set(lay.run, lay);
  const failed = tried.filter(({ lay }) => lay.outcome !== 'laid');
  const isOver = new Set([...stay, ...failed].map(({ lay }) => lay.run));
  return { open: runs.filter(({ run }) => !isOver.has(run.id)), tried, failed };
}

function areMates({ context }: Bench, p: ResolvedRun, q: ResolvedRun): boolean {
  return bundleOf(context.project, p.run.id, q.run.id) !== undefined;
}

/** Of what is left of the progress, the share that one more round is given. */
const ROUND_SHARE = 0.6;

/**
 * Rounds until every run lies or has failed: each round takes in or fails at least one. Answers those that failed.
 * allOrNone: stops at the round in which one fails. Changes `laid`.
 */
export async function settleRuns(
  bench: Bench,
  laid: Map<string, Lay>,
  runs: readonly ResolvedRun[],
  how: 'as-asked' | 'beside',
  watch: Watch,
  allOrNone = false,
): Promise<RunLaid[]> {
  const failed: RunLaid[] = [];
  let open = runs;
  for (let from = 0; open.length > 0 && !(allOrNone && failed.length > 0); from += ROUND_SHARE * (1 - from)) {
    const round = await settleRound(bench, laid, open, how, partOf(watch, from, from + ROUND_SHARE * (1 - from)));
    failed.push(...round.failed);
    open = round.open;
  }
  return failed;
}
