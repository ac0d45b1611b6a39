import type { FromWorker } from '../../shared/jobs/contract.ts';
import { hostJobs, type JobHost } from '../../shared/jobs/hostJobs.ts';

/** The window's long work, in a worker of its own so that the window never waits for it. */
export function windowJobHost(): JobHost {
  return hostJobs((receive, broke) => {
    const worker = new Worker(new URL('./jobs.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = (event: MessageEvent<FromWorker>) => receive(event.data);
    worker.onerror = (event) => broke(event.message || 'the worker could not be started');
    worker.onmessageerror = () => broke('an answer of the worker could not be read');
    return { post: (message) => worker.postMessage(message), terminate: () => worker.terminate() };
  }, globalThis.crossOriginIsolated === true);
}
