import { Worker } from 'node:worker_threads';
import { hostJobs, type JobHost } from '../../shared/jobs/hostJobs.ts';

/** Long work in worker threads of Node; `workerFile` is the built `jobWorker.js`. */
export function threadJobHost(workerFile: string): JobHost {
  return hostJobs((receive, broke) => {
    const worker = new Worker(workerFile);
    worker.on('message', receive);
    worker.on('error', (error) => broke(error.stack ?? error.message));
    worker.on('exit', (code) => broke(`the worker thread ended with code ${code}`));
    worker.on('messageerror', (error) => broke(error.message));
    return { post: (message) => worker.postMessage(message), terminate: () => void worker.terminate() };
  }, true);
}
