import { distance } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { tubesAmong } from '../layRun/tubesOf.ts';
import type { LaidTask, LayCrew, LayHow, LayTask, Line } from './layTask.ts';
import { shareWatch } from './shareWatch.ts';

/** What laying several runs works on. */
export interface Bench {
  readonly context: LayContext;
  readonly resolved: ResolvedProject;
  /** the runs to lay, hardest first, whatever order the project has them in */
  readonly order: readonly ResolvedRun[];
  readonly crew: LayCrew;
  /** lays by run, as they stand */
  readonly laid: Map<string, Lay>;
  /** the lays that stood in the bay when a lay was made: from those it keeps clear, and to those it has measured with the full proof */
  readonly known: WeakMap<Lay, ReadonlySet<Lay>>;
  /** where the hose of a lay goes under pressure */
  readonly breathLines: WeakMap<Lay, readonly (Line | undefined)[]>;
  /** near misses of runs that found no clean way among the others */
  readonly tried: Map<string, Lay>;
  /** how runs lie when none of the others that are to be laid is there */
  readonly free: Map<string, Lay>;
}

/**
 * Lays each of these runs among the laid ones, none of them knowing of the others. Answers in their order, whatever order they are done
 * in: those that mostly take longest are begun first, so that nobody waits for the last one.
 */
export async function layEach(
  bench: Bench,
  runs: readonly ResolvedRun[],
  how: Exclude<LayHow, 'if-clean' | 'near'>,
  laid: ReadonlyMap<string, Lay>,
  watch: Watch,
  doing: (name: string) => string,
  isIdleWork = false,
): Promise<Lay[]> {
  const known = new Set(laid.values());
  const begun = [...runs].sort((p, q) => reachMm(q) - reachMm(p));
  const tasks = begun.map((run): LayTask => ({ how, run, others: tubesAmong(bench.resolved, laid, run.run.id) }));
  const partFor = shareWatch(watch, runs.length);
  const done = await bench.crew.doEach(
    tasks,
    (i) => {
      const part = partFor(i);
      part.report({ fraction: 0, doing: doing((begun[i] as ResolvedRun).run.name) });
      return part;
    },
    isIdleWork,
  );
  for (const { lay, breathLines } of done) {
    bench.known.set(lay as Lay, known);
    bench.breathLines.set(lay as Lay, breathLines);
  }
  return runs.map((run) => (done[begun.indexOf(run)] as LaidTask).lay as Lay);
}

/** How far apart the ends of a run are, mm: the longer, the more ways there are to look through. */
function reachMm({ a, b }: ResolvedRun): number {
  return distance(a.port.seatPoint, b.port.seatPoint);
}
