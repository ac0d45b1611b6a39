import { rm } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { readProjectFiles } from '../../../electron/node/readProjectFiles.ts';
import { threadJobHost } from '../../../electron/node/threadJobHost.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { JobEnd, JobInput } from '../../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { bundled } from '../bundled.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';

/** The report as text, without how long each step took. */
function withoutTimings(end: JobEnd<'layRuns'>): string {
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return JSON.stringify({ ...end.output, lays: end.output.lays.map((lay) => ({ ...lay, timingsMs: {} })) });
}

test('a run laid in a worker thread is, byte for byte, the run laid inline', async () => {
  await using scratch = await scratchFolder();
  await scratch.write(smallBay());
  const read = await readProjectFiles(scratch.folder);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const input: JobInput<'layRuns'> = { projectText: read.value.projectText, files: read.value.files };
  const folder = await bundled({ 'node/jobWorker': 'electron/node/jobWorker.ts' });
  const host = threadJobHost(path.join(folder, '.build/node/jobWorker.js'));
  const fractions: number[] = [];
  const [threaded, inline] = await Promise.all([
    host.start('layRuns', input, (progress) => void fractions.push(progress.fraction)).end,
    runJob('layRuns', input, UNWATCHED, newJobMemory()),
  ]);
  host.close();
  await rm(folder, { recursive: true });
  expect(withoutTimings(threaded)).toBe(withoutTimings(inline));
  expect(threaded.kind === 'done' && threaded.output.lays[0]?.outcome).toBe('laid');
  expect(fractions.length).toBeGreaterThan(0);
  expect(fractions).toEqual(fractions.toSorted((a, b) => a - b));
}, 300_000);
