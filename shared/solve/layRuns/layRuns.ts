import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { runSetting } from '../layRun/runLimits.ts';
import type { Bench } from './bench.ts';
import { crewOfOne, type LayCrew } from './layTask.ts';
import { layAsWellAsCanBe, layTheRest } from './layTheRest.ts';
import { makeRooms } from './makeRooms.ts';
import { mendRuns } from './mendRuns.ts';
import { settleRound, settleRuns } from './settleRuns.ts';
import { towardsAll } from './towardsAll.ts';

/**
 * Lays several runs that keep clear of each other. kept: lays of other runs that stay as they are. In rounds: each run
 * is laid by itself among what lies already; of those that lie clean, as many as can stay together do, and the others are
 * laid again round them, near the sides of things where they mostly go. A run that finds no clean way there waits; then it
 * is given the way that it has without the others, the runs in that way are laid again round it, and the change is kept
 * where all of them lie clean. What still waits is looked for on all sides of things, and at last laid as well as can be,
 * with what it breaks. What stands on the ports of a run stands in the others' way from the start. The lays of a round do not depend on each other, so a crew may make them
 * at once; who makes them, and the order of runs in the project, change nothing in the answer. In the project's order.
 */
export async function layRuns(
  context: LayContext,
  resolved: ResolvedProject,
  chosen: readonly ResolvedRun[],
  kept: readonly Lay[],
  watch: Watch,
  crew: LayCrew = crewOfOne(context),
): Promise<Lay[]> {
  const laid = new Map<string, Lay>(kept.map((l) => [l.run, l]));
  for (const { run } of chosen) laid.delete(run.id);
  const bench: Bench = {
    context,
    resolved,
    order: hardestFirst(context, chosen),
    crew,
    laid,
    known: new WeakMap(),
    breathLines: new WeakMap(),
    tried: new Map(),
    free: new Map(),
  };
  await layAll(bench, watch);
  return resolved.runs.flatMap((run) => {
    const lay = laid.get(run.run.id);
    return lay === undefined ? [] : [towardsAll(bench, run, lay)];
  });
}

async function layAll(bench: Bench, watch: Watch): Promise<void> {
  const { laid, order, tried, free } = bench;
  const first = await settleRound(bench, laid, order, 'as-asked', partOf(watch, 0, 0.45));
  for (const { lay } of first.tried) free.set(lay.run, lay);
  const hopeless = first.failed.filter(({ lay }) => lay.outcome === 'no-way').map(({ run }) => run);
  const silent: Watch = { ...watch, report: () => undefined };
  const laidFirst = new Map(laid);
  // What lies clean by itself is given room sooner than it is looked for on all sides of what took its way.
  const settling = settleRuns(bench, laid, first.open, 'beside', partOf(watch, 0.45, 0.7));
  // A run that does not lie clean by itself will not among others. What to show where nothing was found takes longest to
  // find, so it is looked for by whoever finds nothing to do while others are laid.
  const early = layAsWellAsCanBe(bench, hopeless, laidFirst, silent, true);
  early.catch(() => undefined);
  const later = await settling;
  const failed = [...first.failed, ...later];
  for (const { lay } of first.failed) if (lay.outcome === 'near-miss') tried.set(lay.run, lay);
  const waiting = order.filter(({ run }) => failed.some(({ lay }) => lay.run === run.id));
  const roomless = await makeRooms(bench, waiting, partOf(watch, 0.7, 0.8));
  // Those for which there is no room may lie clean on other sides of things.
  const isOpen = ({ run }: ResolvedRun): boolean => later.some(({ lay }) => lay.run === run.id);
  const last = await settleRuns(bench, laid, roomless.filter(isOpen), 'as-asked', partOf(watch, 0.8, 0.86));
  for (const { lay } of last) if (lay.outcome === 'near-miss') tried.set(lay.run, lay);
  await mendRuns(bench, partOf(watch, 0.86, 0.9));
  const without = roomless.filter(({ run }) => !laid.has(run.id));
  await layTheRest(bench, without, { runs: hopeless, lays: early }, partOf(watch, 0.9, 1));
}

/** The stiffest and thickest hose has the fewest ways. */
function hardestFirst({ project }: LayContext, runs: readonly ResolvedRun[]): ResolvedRun[] {
  const hardness = new Map(
    runs.map((run) => {
      const { minRadiusMm, outsideRadiusMm } = runSetting(project, run);
      return [run, minRadiusMm + outsideRadiusMm];
    }),
  );
  const of = (run: ResolvedRun): number => hardness.get(run) as number;
  return [...runs].sort((a, b) => of(b) - of(a) || (a.run.id < b.run.id ? -1 : 1));
}
