import type { ToWorker } from '../../shared/jobs/contract.ts';
import { newJobMemory, readJobs, runJob } from '../../shared/jobs/runJob.ts';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';
import { browserCrew } from './browserCrew.ts';

declare const self: DedicatedWorkerGlobalScope;

const memory = newJobMemory(browserCrew());
const receive = serveJobs(
  { post: (message) => self.postMessage(message), now: () => performance.now() },
  (name, input, watch) => runJob(name, input, watch, memory),
);
let isFirst = true;
self.onmessage = async (event: MessageEvent<ToWorker>): Promise<void> => {
  await receive(event.data);
  // The bay is on its way to the screen; the rest is read now, so that the first lay need not wait for it.
  if (isFirst) void readJobs();
  isFirst = false;
};
