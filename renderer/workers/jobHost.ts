import type { FromWorker, ToWorker } from '../../shared/jobs/contract.ts';
import { hostJobs, type JobHost } from '../../shared/jobs/hostJobs.ts';
import { wire } from './wire.ts';

/** The window's long work, in a worker of its own so that the window never waits for it. */
export function windowJobHost(): JobHost {
  return hostJobs((receive, broke) => {
    const worker = new Worker(new URL('./jobs.worker.ts', import.meta.url), { type: 'module' });
    return wire<ToWorker, FromWorker>(worker, receive, broke);
  }, globalThis.crossOriginIsolated === true);
}
