import path from 'node:path';
import { threadCrew } from '../../../electron/node/threadCrew.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import { inSharedMemory } from '../../../shared/jobs/sharedBay.ts';
import { layRuns } from '../../../shared/solve/layRuns/layRuns.ts';
import { hasBay, openBay } from '../planningBays.ts';
import { strewnRuns } from '../strewnRuns.ts';
import { referenceMs, rows } from './rows.ts';

/** Runs that keep clear of each other, laid by one worker and by two: the same lays, or it stops here. */
export async function measureBatch(count: number): Promise<void> {
  if (!hasBay('bay-1e6')) return;
  const bay = inSharedMemory(openBay('bay-1e6'));
  const resolved = strewnRuns(bay, 1, count);
  const context = { project: resolved.project, bay };
  const answers: string[] = [];
  const times: number[] = [];
  for (const workers of [2, 1]) {
    const crew = threadCrew(path.join(import.meta.dirname, 'jobWorker.js'), workers);
    const from = performance.now();
    const lays = await layRuns(context, resolved, resolved.runs, [], UNWATCHED, crew.inContext(context));
    const ms = performance.now() - from;
    crew.close();
    const group = `batch of ${count} runs that keep clear of each other, bay-1e6, workers: ${workers}`;
    rows.push([group, 'time', ms, 'ms']);
    rows.push([group, 'time over the reference piece', ms / referenceMs(), 'ratio']);
    rows.push([group, 'laid clean', lays.filter(({ outcome }) => outcome === 'laid').length, `of ${count}`]);
    rows.push([group, 'conflicts left among those', conflictsAmong(lays), 'pairs']);
    answers.push(JSON.stringify(lays.map((lay) => ({ ...lay, timingsMs: {} }))));
    times.push(ms);
  }
  if (answers[0] !== answers[1]) throw new Error('measureBatch: two workers lay other hoses than one');
  const [two, one] = times as [number, number];
  rows.push([
    `batch of ${count} runs that keep clear of each other, bay-1e6`,
    'two workers over one',
    two / one,
    'ratio',
  ]);
}

/** Pairs of clean lays of which one comes nearer to the other than is asked of it. */
function conflictsAmong(lays: readonly Lay[]): number {
  const clean = lays.filter(({ outcome }) => outcome === 'laid');
  const meets = (one: Lay, other: Lay): boolean =>
    one.clearances.some((c) => c.to.kind === 'run' && c.to.id === other.run && c.clearanceMm < c.requiredMm);
  return clean.reduce((sum, p, i) => sum + clean.slice(i + 1).filter((q) => meets(p, q) || meets(q, p)).length, 0);
}
