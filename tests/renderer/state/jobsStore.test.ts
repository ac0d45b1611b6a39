import { expect, it } from 'vitest';
import { createJobsStore } from '../../../renderer/state/jobsStore.ts';
import type { Progress } from '../../../shared/base/watch.ts';
import type { JobEnd, JobInput, JobName } from '../../../shared/jobs/contract.ts';
import type { JobHost } from '../../../shared/jobs/hostJobs.ts';

const FILES = { projectText: '', files: [] };

function found(run: string, x: number): Progress {
  const lain = { run, points: [[0, 0, 0] as const, [x, 0, 0] as const], outsideDiameterMm: 12 };
  return { fraction: 0.5, doing: `laying ${run}`, lain };
}

/** A store whose host tells and ends when the test says so. */
function held() {
  let tell: (progress: Progress) => void = () => undefined;
  let finish: (end: JobEnd<JobName>) => void = () => undefined;
  const start: JobHost['start'] = <N extends JobName>(_name: N, _input: JobInput<N>, onProgress = tell) => {
    tell = onProgress;
    const end = new Promise<JobEnd<JobName>>((resolve) => {
      finish = resolve;
    });
    return { end: end as Promise<JobEnd<N>>, cancel: () => finish({ kind: 'cancelled' }) };
  };
  const jobs = createJobsStore({ start });
  const shown = (): [string, number | undefined][] =>
    Object.values(jobs.getState().lain).map(({ run, points }) => [run, points[1]?.[0]]);
  return { jobs, shown, tell: (progress: Progress) => tell(progress) };
}

it('shows each hose as it is found, the last time it was, and none once the work is cancelled', async () => {
  const { jobs, shown, tell } = held();
  const work = jobs.work('Laying all runs', 'layRuns', FILES);
  tell(found('feed', 100));
  tell({ fraction: 0.6, doing: 'laying the drain' });
  tell(found('drain', 200));
  tell(found('feed', 150));
  expect(shown()).toEqual([
    ['feed', 150],
    ['drain', 200],
  ]);
  jobs.cancel();
  expect(await work).toBeNull();
  expect(shown()).toEqual([]);
});

it('shows no hose that is only tried', async () => {
  const { jobs, shown, tell } = held();
  const work = jobs.work('Trying other ends', 'endTrial', { ...FILES, run: 'feed' });
  tell(found('feed', 100));
  expect(shown()).toEqual([]);
  jobs.cancel();
  await work;
});
