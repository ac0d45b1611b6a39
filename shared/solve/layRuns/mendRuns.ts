import type { Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import { type Bench, layEach } from './bench.ts';
import { isInTrouble, type RunLaid } from './conflicts.ts';

/**
 * Lays again the runs that keep from what they knew, but not from a run that was laid after them: too near as that run
 * does not see it (each keeps less near its own ports), or touching it under pressure. The new lay stays where neither it
 * nor the others with it are in such trouble; else the old one does, and it is said. Once: what stays is a finding.
 */
export async function mendRuns(bench: Bench, watch: Watch): Promise<void> {
  const { laid, order, known } = bench;
  const clean = (): RunLaid[] =>
    order.flatMap((run) => {
      const lay = laid.get(run.run.id);
      return lay?.outcome === 'laid' ? [{ run, lay }] : [];
    });
  const others = (one: RunLaid): RunLaid[] => clean().filter(({ run }) => run !== one.run);
  const troubled = clean().filter((one) =>
    others(one).some((other) => !known.get(one.lay)?.has(other.lay) && isInTrouble(bench, one, other)),
  );
  const runs = troubled.map(({ run }) => run);
  const lays = await layEach(bench, runs, 'as-asked', laid, watch, (name) => `laying ${name} again`);
  for (const [i, run] of runs.entries()) {
    const one: RunLaid = { run, lay: lays[i] as Lay };
    const stays = others(one).every((other) => !isInTrouble(bench, one, other) && !isInTrouble(bench, other, one));
    if (one.lay.outcome === 'laid' && stays) laid.set(one.lay.run, one.lay);
  }
}
