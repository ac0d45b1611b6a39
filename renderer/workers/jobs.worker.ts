import type { ToWorker } from '../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';

declare const self: DedicatedWorkerGlobalScope;

const memory = newJobMemory();
const receive = serveJobs(
  { post: (message) => self.postMessage(message), now: () => performance.now() },
  (name, input, watch) => runJob(name, input, watch, memory),
);
self.onmessage = (event: MessageEvent<ToWorker>) => void receive(event.data);
