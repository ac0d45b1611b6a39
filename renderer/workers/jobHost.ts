import type { FromWorker, ToWorker } from '../../shared/jobs/contract.ts';
import { hostJobs, type JobHost } from '../../shared/jobs/hostJobs.ts';
import { wire } from './wire.ts';

/**
 * The window's long work, in a worker of its own so that the window never waits for it. The first worker is started at
 * once: it reads its program while the window reads the project.
 */
export function windowJobHost(): JobHost {
  let early: Worker | undefined = newWorker();
  // One that did not even start is left to the job that needs it, which starts another and hears why.
  early.onerror = () => {
    early = undefined;
  };
  return hostJobs((receive, broke) => {
    const worker = early ?? newWorker();
    early = undefined;
    return wire<ToWorker, FromWorker>(worker, receive, broke);
  }, globalThis.crossOriginIsolated === true);
}

function newWorker(): Worker {
  return new Worker(new URL('./jobs.worker.ts', import.meta.url), { type: 'module' });
}
