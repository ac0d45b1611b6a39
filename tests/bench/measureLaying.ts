import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { threadCrew } from '../../electron/node/threadCrew.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { inSharedMemory } from '../../shared/jobs/sharedBay.ts';
import { buildRunField } from '../../shared/solve/bay/runField.ts';
import { buildTubeField } from '../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../shared/solve/layRun/layRun.ts';
import { layRuns } from '../../shared/solve/layRuns/layRuns.ts';
import type { Effort } from '../../shared/solve/search/problem.ts';
import { searchWays } from '../../shared/solve/search/searchWays.ts';
import { hasBay, openBay, type PlanningBay } from './planningBays.ts';
import { reference } from './reference.ts';
import { strewnRuns } from './strewnRuns.ts';

/**
 * Laying in large bays: lengths found against the best known, and what whole runs and a batch take, in ms and as ratios to the
 * reference piece of the same run. Not part of the tests. `npm run measure` writes tests/bench/results/<machine>-laying.csv;
 * `npm run measure -- instances`, `runs` or `batch` only those.
 */
type Row = readonly [group: string, name: string, value: number, unit: string];
const rows: Row[] = [];

interface Instance {
  readonly name: string;
  readonly start: { p: [number, number, number]; t: [number, number, number] };
  readonly goal: { p: [number, number, number]; t: [number, number, number] };
  readonly minRadius: number;
  readonly tubeRadius: number;
  readonly clearance: number;
  readonly bounds: readonly [[number, number, number], [number, number, number]];
  readonly bestKnownLength: number;
}

const SEEDS = 20;
const instanceFile = path.resolve('../shared/reference/planning-instances.json');

function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

function quantile(values: readonly number[], share: number): number {
  const all = sorted(values);
  return all[Math.min(all.length - 1, Math.floor(share * all.length))] as number;
}

function timed(work: () => void): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

function referenceMs(): number {
  return Math.min(...Array.from({ length: 50 }, () => timed(() => reference())));
}

function measureInstance(instance: Instance, bay: PlanningBay, effort: Effort): void {
  if (!hasBay(bay)) {
    process.stdout.write(`${instance.name}: left out, ${bay} was not made\n`);
    return;
  }
  const index = openBay(bay);
  const box = { min: instance.bounds[0], max: instance.bounds[1] };
  const found: { lengthMm: number; ms: number }[] = [];
  for (let seed = 1; seed <= SEEDS; seed++) {
    let lengthMm = Number.POSITIVE_INFINITY;
    const ms = timed(() => {
      const keeps = { skinMm: new Map([['plain', instance.tubeRadius + instance.clearance]]), tubeMm: 0, held: [] };
      const field = { ...buildRunField({ ...index, bounds: box }, buildTubeField([]), keeps), bounds: box };
      const from = { kind: 'held', pose: { point: instance.start.p, direction: instance.start.t } } as const;
      const to = { kind: 'held', pose: { point: instance.goal.p, direction: instance.goal.t } } as const;
      const asked = { from, to, minRadiusMm: instance.minRadius, field, ways: 1, seed, effort };
      lengthMm = searchWays(asked, UNWATCHED).ways[0]?.lengthMm ?? lengthMm;
    });
    found.push({ lengthMm, ms });
  }
  const lengths = found.map((f) => f.lengthMm);
  const times = found.map((f) => f.ms);
  const group = `${instance.name}, ${effort}, ${SEEDS} seeds`;
  rows.push([group, 'length, median', quantile(lengths, 0.5), 'mm']);
  rows.push([group, 'length, longest', Math.max(...lengths), 'mm']);
  rows.push([group, 'longest over best known', Math.max(...lengths) / instance.bestKnownLength, 'ratio']);
  pushTimes(group, times);
}

function pushTimes(group: string, times: readonly number[]): void {
  const unit = referenceMs();
  rows.push([group, 'time, median', quantile(times, 0.5), 'ms']);
  rows.push([group, 'time, 95 of 100', quantile(times, 0.95), 'ms']);
  rows.push([group, 'time, median, over the reference piece', quantile(times, 0.5) / unit, 'ratio']);
}

/** Strewn runs one by one, alone in the bay, index ready; the first is laid once before, to warm up. */
function measureRuns(bay: PlanningBay, count: number): number | undefined {
  if (!hasBay(bay)) return undefined;
  const index = openBay(bay);
  const { project, runs } = strewnRuns(openBay('bay-1e6'), 1, count);
  const alone = buildTubeField([]);
  const context = { project, bay: index };
  layRun(context, runs[0] as (typeof runs)[number], alone, UNWATCHED);
  let clean = 0;
  const times = runs.map((run) =>
    timed(() => {
      if (layRun(context, run, alone, UNWATCHED).outcome === 'laid') clean++;
    }),
  );
  const group = `${count} strewn runs, each alone, ${bay}`;
  pushTimes(group, times);
  rows.push([group, 'laid clean', clean, `of ${count}`]);
  return times.reduce((sum, ms) => sum + ms, 0);
}

/** Runs that keep clear of each other, laid by one worker and by two: the same lays, or it stops here. */
async function measureBatch(count: number): Promise<void> {
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

async function measure(parts: readonly string[]): Promise<void> {
  const wanted = (part: string): boolean => parts.length === 0 || parts.includes(part);
  if (wanted('instances')) measureInstances();
  if (wanted('runs')) measureGrowth();
  if (wanted('batch')) await measureBatch(24);
  write();
}

function measureInstances(): void {
  if (existsSync(instanceFile)) {
    const instances = (JSON.parse(readFileSync(instanceFile, 'utf8')) as { instances: Instance[] }).instances;
    for (const instance of instances)
      for (const effort of ['quick', 'normal'] as const)
        measureInstance(instance, instance.name === 'P1' ? 'bay-1e6' : 'motorBike', effort);
  }
}

function measureGrowth(): void {
  const totals = (['bay-1e5', 'bay-1e6', 'bay-5e6'] as const).map((bay) => measureRuns(bay, 24));
  const [small, middle, large] = totals;
  if (small && middle)
    rows.push(['growth', 'all 24 runs, 10 times the triangles (0.1 to 1 M)', middle / small, 'ratio']);
  if (middle && large) rows.push(['growth', 'all 24 runs, 5 times the triangles (1 to 5 M)', large / middle, 'ratio']);
}

function write(): void {
  const cpus = os.cpus();
  const machine = `${cpus.length} x ${(cpus[0]?.model ?? 'unknown').trim()}, ${Math.round(os.totalmem() / 2 ** 30)} GiB, Node ${process.version}`;
  const name = machine
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const folder = path.resolve('tests/bench/results');
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, `${name}-laying.csv`);
  const groups = new Set(rows.map(([group]) => `"${group}"`));
  const before = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n').slice(2) : [];
  const kept = before.filter((line) => !groups.has(line.slice(0, line.indexOf('","') + 1)));
  const measured = rows.map(([group, what, value, unit]) => `"${group}","${what}",${value.toFixed(3)},${unit}`);
  const lines = [...kept, ...measured];
  const text = [`# ${machine}`, 'group,measure,value,unit', ...lines, ''].join('\n');
  writeFileSync(file, text);
  process.stdout.write(text);
}

await measure(process.argv.slice(2));
