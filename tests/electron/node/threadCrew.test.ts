import { rm } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readProjectFiles } from '../../../electron/node/readProjectFiles.ts';
import { startThread } from '../../../electron/node/startThread.ts';
import { threadCrew } from '../../../electron/node/threadCrew.ts';
import { threadJobHost } from '../../../electron/node/threadJobHost.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { JobInput } from '../../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { laysAsText } from '../../oracles/laysAsText.ts';
import { bundled } from '../bundled.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';

let folder: string;
let workerFile: string;
beforeAll(async () => {
  folder = await bundled({ 'node/jobWorker': 'electron/node/jobWorker.ts' });
  workerFile = path.join(folder, '.build/node/jobWorker.js');
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The small rig with three hoses side by side over the post, near enough to be in each other's way. */
async function threeRuns(): Promise<JobInput<'layRuns'>> {
  await using scratch = await scratchFolder();
  const { ports, runs } = JSON.parse(smallBay()['project.json'] as string);
  const asideMm = [0, 45, -45];
  await scratch.write(
    smallBay({
      ports: asideMm.flatMap((mm, i) =>
        ports.map((port: { id: string; seatPoint: number[] }) => ({
          ...port,
          id: `${port.id}-${i}`,
          seatPoint: [port.seatPoint[0], mm, port.seatPoint[2]],
        })),
      ),
      runs: asideMm.map((_, i) => ({
        ...runs[0],
        id: `feed-${i}`,
        a: { ...runs[0].a, port: `left-${i}` },
        b: { ...runs[0].b, port: `right-${i}` },
      })),
    }),
  );
  const read = await readProjectFiles(scratch.folder);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { projectText: read.value.projectText, files: read.value.files };
}

test('one, two and three threads give the bytes that are given inline', async () => {
  const input = await threeRuns();
  const laid = async (most?: number): Promise<string> => {
    const crew = most === undefined ? undefined : threadCrew(workerFile, most);
    const end = await runJob('layRuns', input, UNWATCHED, newJobMemory(crew));
    crew?.close();
    if (end.kind !== 'done') throw new Error(JSON.stringify(end));
    return JSON.stringify({ ...end.output, lays: laysAsText(end.output.lays) });
  };
  const inline = await laid();
  expect(inline).toContain('feed-2');
  for (const most of [1, 2, 3]) expect(await laid(most)).toBe(inline);
}, 300_000);

test('a job thread has its threads stop at the cancel flag, and they lay the next job', async () => {
  const input = await threeRuns();
  const host = threadJobHost(workerFile);
  const running = host.start('layRuns', input, () => running.cancel());
  expect(await running.end).toEqual({ kind: 'cancelled' });
  expect((await host.start('layRuns', input).end).kind).toBe('done');
  host.close();
}, 300_000);

test('a thread that cannot start fails the work in words', async () => {
  const crew = threadCrew(path.join(folder, 'none.js'), 2);
  const end = runJob('layRuns', await threeRuns(), UNWATCHED, newJobMemory(crew));
  await expect(end).rejects.toThrow('a worker that lays hoses broke off');
}, 300_000);

test('threads end with the thread that started them', async () => {
  const counting = await bundled({ counting: 'tests/electron/countingWorker.ts' });
  const memory = new SharedArrayBuffer(4);
  const counted = (): number => Atomics.load(new Int32Array(memory), 0);
  const none = (): void => undefined;
  const parent = startThread<SharedArrayBuffer, never>(
    path.join(counting, '.build/counting.js'),
    undefined,
    none,
    none,
  );
  parent.post(memory);
  while (counted() === 0) await wait(10);
  parent.terminate();
  // Ends when the counting has; if it never did, the test would not.
  for (let last = -1; last !== counted(); await wait(100)) last = counted();
  await rm(counting, { recursive: true });
}, 60_000);
