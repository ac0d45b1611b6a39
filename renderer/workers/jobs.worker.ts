import type { ToWorker } from '../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';
import { browserCrew } from './browserCrew.ts';

declare const self: DedicatedWorkerGlobalScope;

const memory = newJobMemory(browserCrew());
const receive = serveJobs(
  { post: (message) => self.postMessage(message), now: () => performance.now() },
  (name, input, watch) => runJob(name, input, watch, memory),
);
self.onmessage = (event: MessageEvent<ToWorker>) => void receive(event.data);
