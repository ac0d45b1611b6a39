import type { ToWorker } from '../../shared/jobs/contract.ts';
import { newJobMemory, readJobs, runJob } from '../../shared/jobs/runJob.ts';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';
import { browserCrew } from './browserCrew.ts';
import { SHORT_JOBS } from './shortJobs.ts';

declare const self: DedicatedWorkerGlobalScope;

const memory = newJobMemory(browserCrew());
const receive = serveJobs(
  { post: (message) => self.postMessage(message), now: () => performance.now() },
  (name, input, watch) => runJob(name, input, watch, memory),
);
/** ms after the first job until the rest is read: the bay is on the screen by then, and the machine has nothing else to do. */
const READ_REST_MS = 2_000;
let readsTheRest = self.name !== SHORT_JOBS;
self.onmessage = async (event: MessageEvent<ToWorker>): Promise<void> => {
  await receive(event.data);
  // So that the first lay need not wait for it.
  if (readsTheRest) setTimeout(() => void readJobs(), READ_REST_MS);
  readsTheRest = false;
};
