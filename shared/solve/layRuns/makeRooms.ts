import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { type Bench, layEach } from './bench.ts';
import { areInConflict, inTheWayOf, type RunLaid } from './conflicts.ts';
import { settleRuns } from './settleRuns.ts';
import { shareWatch } from './shareWatch.ts';

/**
 * Makes room for runs that found no clean way among the others: each as it lies without them, the runs in its way lifted
 * and laid again round it. All rooms of a round are tried at once on what is laid then; those where all lie clean are
 * kept in order, as far as they leave each other alone: a round keeps at least one, or is the last. Answers the runs that
 * there is no room for.
 */
export async function makeRooms(bench: Bench, runs: readonly ResolvedRun[], watch: Watch): Promise<ResolvedRun[]> {
  let open = await withFreeWay(bench, runs, partOf(watch, 0, 0.2));
  for (let from = 0.2; open.length > 0; from += (1 - from) / 2) {
    const partFor = shareWatch(partOf(watch, from, (1 + from) / 2), open.length);
    const rooms = await Promise.all(open.map((run, i) => roomFor(bench, run, partFor(i))));
    const changed: RunLaid[] = [];
    for (const room of rooms) if (room !== undefined && leavesAlone(bench, room, changed)) changed.push(...room);
    for (const { lay } of changed) bench.laid.set(lay.run, lay);
    open = open.filter(({ run }, i) => rooms[i] !== undefined && !bench.laid.has(run.id));
  }
  return runs.filter(({ run }) => !bench.laid.has(run.id));
}

/** The runs that lie clean where the others are not there. */
async function withFreeWay(bench: Bench, runs: readonly ResolvedRun[], watch: Watch): Promise<ResolvedRun[]> {
  const { free, order, laid } = bench;
  const isToLay = new Set(order.map(({ run }) => run.id));
  const kept = new Map([...laid].filter(([id]) => !isToLay.has(id)));
  const asked = runs.filter(({ run }) => !free.has(run.id));
  for (const lay of await layEach(bench, asked, 'as-asked', kept, watch, words)) free.set(lay.run, lay);
  return runs.filter(({ run }) => free.get(run.id)?.outcome === 'laid');
}

function words(name: string): string {
  return `making room for ${name}`;
}

/** What changes so that a run lies as it does without the others, all of it clean; undefined where that cannot be. */
async function roomFor(bench: Bench, run: ResolvedRun, watch: Watch): Promise<RunLaid[] | undefined> {
  const own: RunLaid = { run, lay: bench.free.get(run.run.id) as Lay };
  watch.report({ fraction: 0, doing: words(run.run.name) });
  const lifted = inTheWayOf(bench, bench.laid, own);
  const trial = new Map(bench.laid).set(own.lay.run, own.lay);
  for (const other of lifted) trial.delete(other.run.id);
  const silent: Watch = { ...watch, report: () => undefined };
  const failed = await settleRuns(bench, trial, lifted, 'as-asked', silent, true);
  if (failed.length > 0) return undefined;
  return [own, ...lifted.map((other) => ({ run: other, lay: trial.get(other.run.id) as Lay }))];
}

function leavesAlone(bench: Bench, room: readonly RunLaid[], changed: readonly RunLaid[]): boolean {
  return room.every((p) => changed.every((q) => p.lay.run !== q.lay.run && !areInConflict(bench, p, q)));
}
