import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { measureBatch } from './laying/batch.ts';
import { measureFreePairs } from './laying/freePairs.ts';
import { measureInstances } from './laying/instances.ts';
import { rows } from './laying/rows.ts';
import { measureBayGrowth, measureLengthGrowth } from './laying/strewn.ts';

/**
 * Laying in large bays: lengths found against the best known, and what whole runs and a batch take, in ms and as ratios to the
 * reference piece of the same run. Not part of the tests. `npm run measure` writes tests/bench/results/<machine>-laying.csv;
 * `npm run measure -- free`, `instances`, `runs`, `length` or `batch` only those.
 */
async function measure(parts: readonly string[]): Promise<void> {
  const wanted = (part: string): boolean => parts.length === 0 || parts.includes(part);
  if (wanted('free')) measureFreePairs();
  if (wanted('instances')) measureInstances();
  if (wanted('runs')) measureBayGrowth();
  if (wanted('length')) measureLengthGrowth();
  if (wanted('batch')) await measureBatch(24);
  write();
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
