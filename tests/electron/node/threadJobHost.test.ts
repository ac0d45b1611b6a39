import { rm } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { threadJobHost } from '../../../electron/node/threadJobHost.ts';
import { hostJobs, type JobHost } from '../../../shared/jobs/hostJobs.ts';
import { serveJobs } from '../../../shared/jobs/serveJobs.ts';
import { bundled } from '../bundled.ts';
import { fakeJobs } from '../fakeJobs.ts';

let folder: string;
beforeAll(async () => {
  folder = await bundled({ worker: 'tests/electron/fakeJobWorker.ts' });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

function inThread(): JobHost {
  return threadJobHost(path.join(folder, '.build', 'worker.js'));
}

/** The same two halves of the protocol with nothing between them but a copy of each message. */
function inline(canShareMemory = true): JobHost {
  return hostJobs((receive) => {
    const serve = serveJobs({ post: (m) => queueMicrotask(() => receive(structuredClone(m))), now: () => 0 }, fakeJobs);
    return { post: (message) => void serve(message), terminate: () => undefined };
  }, canShareMemory);
}

const input = (projectText: string) => ({
  projectText,
  files: [{ path: 'bay.stl', bytes: Uint8Array.from({ length: 1000 }, (_, i) => (i * 37) % 256) }],
});

describe('jobs in a thread', () => {
  test('answer the same bytes as inline', async () => {
    const thread = inThread();
    const [a, b] = await Promise.all([thread, inline()].map((h) => h.start('openProject', input('count')).end));
    thread.close();
    if (a?.kind !== 'done' || b?.kind !== 'done') throw new Error('expected both to be done');
    expect(new Uint8Array(a.output.bay.positions.buffer)).toEqual(new Uint8Array(b.output.bay.positions.buffer));
    expect(a.output.bay.indices).toEqual(b.output.bay.indices);
    expect(a.output.bay.positions[3]).toBe(Math.fround(111 / 3));
  });

  test('stop at the cancel flag, and the thread lives on', async () => {
    const thread = inThread();
    const heard: string[] = [];
    const running = thread.start('openProject', input('wait'), (progress) => {
      heard.push(progress.doing);
      running.cancel();
    });
    expect(await running.end).toEqual({ kind: 'cancelled' });
    expect(heard).toContain('waiting');
    expect((await thread.start('openProject', input('count')).end).kind).toBe('done');
    thread.close();
  });

  test('are thrown away when cancelled twice, and the next job gets a new thread', async () => {
    const thread = inThread();
    const running = thread.start('openProject', input('deaf'), () => {
      running.cancel();
      running.cancel();
    });
    const next = thread.start('openProject', input('count'));
    expect(await running.end).toEqual({ kind: 'cancelled' });
    expect((await next.end).kind).toBe('done');
    thread.close();
  });

  test('fail as values when they throw or their thread dies, and later jobs are done', async () => {
    const thread = inThread();
    const ends = ['throw', 'exit', 'wrong', 'count'].map((text) => thread.start('openProject', input(text)).end);
    const [thrown, exited, wrong, counted] = await Promise.all(ends);
    expect(thrown).toMatchObject({ kind: 'failed', message: expect.stringContaining('thrown on purpose') });
    expect(exited).toMatchObject({ kind: 'failed', message: expect.stringContaining('code 3') });
    expect(wrong).toMatchObject({ kind: 'bad-input', problems: [{ path: 'runs[0]' }] });
    expect(counted?.kind).toBe('done');
    thread.close();
  });

  test('that still wait end as cancelled when the host closes', async () => {
    const thread = inThread();
    const ends = [thread.start('openProject', input('wait')).end, thread.start('openProject', input('count')).end];
    thread.close();
    expect(await Promise.all(ends)).toEqual([{ kind: 'cancelled' }, { kind: 'cancelled' }]);
  });

  test('fail as a value when the worker file is missing', async () => {
    const thread = threadJobHost(path.join(folder, 'none.js'));
    expect((await thread.start('openProject', input('count')).end).kind).toBe('failed');
    thread.close();
  });
});
