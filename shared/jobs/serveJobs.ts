import type { Watch } from '../base/watch.ts';
import { asMadeHere } from './asMadeHere.ts';
import type { FromWorker, JobEnd, JobInput, JobName, ToWorker } from './contract.ts';
import { wordsOf, workerWatch } from './workerWatch.ts';

/** What does the work: `runJob` with the worker's memory bound to it. */
export type DoJob = <N extends JobName>(name: N, input: JobInput<N>, watch: Watch) => Promise<JobEnd<N>>;

/** What a worker lends the protocol: a way to answer and a monotonic clock in ms. */
export interface WorkerSide {
  post(message: FromWorker): void;
  now(): number;
}

/**
 * The worker's half of the protocol, the same in a browser worker, in a Node worker thread and inline. The result takes
 * one message at a time, does the job, and posts progress and exactly one end. Whatever is thrown ends as `failed`,
 * after which the host throws the worker away.
 */
export function serveJobs(side: WorkerSide, doJob: DoJob): (message: ToWorker) => Promise<void> {
  return async (received) => {
    const { id, name, input, cancelFlag } = asMadeHere(received);
    const watch = workerWatch(side, cancelFlag, (progress) => side.post({ id, kind: 'progress', progress }));
    let end: JobEnd<JobName>;
    try {
      end = await doJob(name, input, watch);
    } catch (error) {
      end = { kind: 'failed', message: wordsOf(error) };
    }
    side.post({ id, kind: 'end', end });
  };
}
