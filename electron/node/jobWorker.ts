import { parentPort } from 'node:worker_threads';
import { invariant } from '../../shared/base/invariant.ts';
import type { ToWorker } from '../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';

invariant(parentPort, 'jobWorker: runs as a worker thread only');
const host = parentPort;
const memory = newJobMemory();
const receive = serveJobs(
  { post: (message) => host.postMessage(message), now: () => performance.now() },
  (name, input, watch) => runJob(name, input, watch, memory),
);
host.on('message', (message: ToWorker) => void receive(message));
