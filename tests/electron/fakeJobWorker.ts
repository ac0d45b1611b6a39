import { parentPort } from 'node:worker_threads';
import { serveJobs } from '../../shared/jobs/serveJobs.ts';
import { fakeJobs } from './fakeJobs.ts';

const host = parentPort;
if (host === null) throw new Error('fakeJobWorker: runs as a worker thread only');
const receive = serveJobs({ post: (message) => host.postMessage(message), now: () => performance.now() }, fakeJobs);
host.on('message', (message) => void receive(message));
