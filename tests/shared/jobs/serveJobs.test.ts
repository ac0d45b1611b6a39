import { expect, test } from 'vitest';
import { partOf } from '../../../shared/base/watch.ts';
import type { FromWorker } from '../../../shared/jobs/contract.ts';
import { type DoJob, serveJobs } from '../../../shared/jobs/serveJobs.ts';
import { PROGRESS_EVERY_MS } from '../../../shared/jobs/workerWatch.ts';

async function served(doJob: DoJob, now: () => number, cancelFlag?: SharedArrayBuffer): Promise<FromWorker[]> {
  const posted: FromWorker[] = [];
  const serve = serveJobs({ post: (message) => void posted.push(message), now }, doJob);
  const flag = cancelFlag === undefined ? {} : { cancelFlag };
  await serve({ id: 7, name: 'openProject', input: { projectText: '', files: [] }, ...flag });
  return posted;
}

test('progress crosses at most every 40 ms, the end always and once', async () => {
  let clockMs = 0;
  const posted = await served(
    async (_name, _input, watch) => {
      for (let i = 0; i < 1000; i++) {
        watch.report({ fraction: i / 1000, doing: 'counting' });
        clockMs += 1;
      }
      return { kind: 'cancelled' };
    },
    () => clockMs,
  );
  expect(posted.filter((m) => m.kind === 'progress')).toHaveLength(1000 / PROGRESS_EVERY_MS);
  expect(posted.at(-1)).toEqual({ id: 7, kind: 'end', end: { kind: 'cancelled' } });
  expect(posted.filter((m) => m.kind === 'end')).toHaveLength(1);
});

test('a hose that was found crosses however soon it is, since it is told once', async () => {
  const lain = (run: string) => ({ run, points: [[0, 0, 0] as const], outsideDiameterMm: 10 });
  const posted = await served(
    async (_name, _input, watch) => {
      for (const run of ['a', 'b']) {
        watch.report({ fraction: 0.5, doing: 'laying' });
        partOf(watch, 0.5, 1).report({ fraction: 0, doing: 'laying', lain: lain(run) });
      }
      return { kind: 'cancelled' };
    },
    () => 0,
  );
  expect(posted.flatMap((m) => (m.kind === 'progress' ? (m.progress.lain?.run ?? 'none') : []))).toEqual([
    'none',
    'a',
    'b',
  ]);
});

test('the watch reads the flag each time it is asked', async () => {
  const flag = new SharedArrayBuffer(4);
  const seen: boolean[] = [];
  await served(
    async (_name, _input, watch) => {
      seen.push(watch.isCancelled());
      Atomics.store(new Int32Array(flag), 0, 1);
      seen.push(watch.isCancelled());
      return { kind: 'cancelled' };
    },
    () => 0,
    flag,
  );
  expect(seen).toEqual([false, true]);
});

test('what is thrown, an error or not, ends as failed', async () => {
  const thrower = (thrown: unknown): DoJob => {
    return async () => {
      throw thrown;
    };
  };
  const [first] = await served(thrower(new Error('at once')), () => 0);
  const [second] = await served(thrower('a word'), () => 0);
  expect(first).toMatchObject({ kind: 'end', end: { kind: 'failed', message: expect.stringContaining('at once') } });
  expect(second).toMatchObject({ kind: 'end', end: { kind: 'failed', message: 'a word' } });
});
