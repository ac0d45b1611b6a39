import type { FromWorker, ToWorker } from '../../shared/jobs/contract.ts';
import { hostJobs, type JobHost } from '../../shared/jobs/hostJobs.ts';
import { startThread } from './startThread.ts';

/** Long work in worker threads of Node; `workerFile` is the built `jobWorker.js`. */
export function threadJobHost(workerFile: string): JobHost {
  return hostJobs((receive, broke) => startThread<ToWorker, FromWorker>(workerFile, undefined, receive, broke), true);
}
