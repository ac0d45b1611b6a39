// Turns vitest's bench output into rows of tests/bench/results: ratios to the reference of the same group, best times.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../..');
const { files } = JSON.parse(readFileSync(path.join(root, '.tmp/bench.json'), 'utf8'));
const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const cpus = os.cpus();
const machine = `${cpus.length} x ${cpus[0].model.trim()}, ${Math.round(os.totalmem() / 2 ** 30)} GiB, Node ${process.version}`;
const rows = files.flatMap(({ groups }) =>
  groups.flatMap(({ fullName, benchmarks }) => {
    const group = fullName.split(' > ').at(-1);
    const base = benchmarks.find((b) => b.name.startsWith('reference')).min;
    return benchmarks.map((b) => [version, group, b.name, (b.min / base).toFixed(3), b.min.toFixed(4), b.sampleCount]);
  }),
);
const quoted = (cell) => (/[",]/.test(String(cell)) ? `"${String(cell).replaceAll('"', '""')}"` : cell);
const lines = [['version', 'group', 'bench', 'ratio to reference', 'best ms', 'samples'], ...rows];
const name = machine
  .toLowerCase()
  .replace(/[^a-z0-9]+/g, '-')
  .replace(/^-|-$/g, '');
const folder = path.join(root, 'tests/bench/results');
mkdirSync(folder, { recursive: true });
writeFileSync(
  path.join(folder, `${name}.csv`),
  `# ${machine}\n${lines.map((l) => l.map(quoted).join(',')).join('\n')}\n`,
);
