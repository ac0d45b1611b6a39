import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { type Bench, layEach } from './bench.ts';
import { meetsUnknown } from './conflicts.ts';

/** Runs laid as well as can be, none of them knowing of the others. hopeless: known to find no clean way, and laid while there is nothing else to do. */
export function layAsWellAsCanBe(
  bench: Bench,
  runs: readonly ResolvedRun[],
  laid: ReadonlyMap<string, Lay>,
  watch: Watch,
  hopeless = false,
): Promise<Lay[]> {
  const doing = (name: string): string => `laying ${name} as well as can be`;
  const how = hopeless ? 'with-less' : 'as-well-as-can-be';
  return layEach(bench, runs, how, laid, watch, doing, hopeless);
}

/**
 * Gives every run that does not lie yet the best there is: the near miss that it came to before where no run taken in
 * since stands in its way, else it is laid as well as can be. Hoses that go through things anyway stay as they are. All
 * are laid at once; one that meets another is laid again. begun: runs of which that is under way.
 */
export async function layTheRest(
  bench: Bench,
  runs: readonly ResolvedRun[],
  begun: { readonly runs: readonly ResolvedRun[]; readonly lays: Promise<readonly Lay[]> },
  watch: Watch,
): Promise<void> {
  const { laid, tried } = bench;
  const stays = (run: ResolvedRun, lay: Lay): boolean => lay.outcome === 'no-way' || !meetsUnknown(bench, { run, lay });
  const anew: ResolvedRun[] = [];
  for (const run of runs.filter((r) => !begun.runs.includes(r))) {
    const lay = tried.get(run.run.id);
    if (lay !== undefined && stays(run, lay)) laid.set(lay.run, lay);
    else anew.push(run);
  }
  const found = await Promise.all([layAsWellAsCanBe(bench, anew, laid, partOf(watch, 0, 0.7)), begun.lays]);
  const toPlace = [...anew, ...begun.runs];
  for (const [i, lay] of found.flat().entries()) {
    const run = toPlace[i] as ResolvedRun;
    const part = partOf(watch, 0.7 + (0.3 * i) / toPlace.length, 0.7 + (0.3 * (i + 1)) / toPlace.length);
    const told = stays(run, lay) ? lay : ((await layAsWellAsCanBe(bench, [run], laid, part))[0] as Lay);
    laid.set(told.run, told);
  }
}
