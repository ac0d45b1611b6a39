import { parentPort } from 'node:worker_threads';
import { invariant } from '../../shared/base/invariant.ts';
import type { ToWorker } from '../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';
import { threadCrew } from './threadCrew.ts';

/** Makes this worker thread do jobs, with a crew of threads that lay hoses for it. workerFile: the file they start from. */
export function serveJobsHere(workerFile: string): void {
  invariant(parentPort, 'serveJobsHere: runs as a worker thread only');
  const host = parentPort;
  const memory = newJobMemory(threadCrew(workerFile));
  const receive = serveJobs(
    { post: (message) => host.postMessage(message), now: () => performance.now() },
    (name, input, watch) => runJob(name, input, watch, memory),
  );
  host.on('message', (message: ToWorker) => void receive(message));
}
