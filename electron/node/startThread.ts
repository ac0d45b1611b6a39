import { Worker } from 'node:worker_threads';

/** Starts a worker thread as the protocols of `shared/jobs` see one. data: what the thread finds as its `workerData`. */
export function startThread<To, From>(
  file: string,
  data: unknown,
  receive: (message: From) => void,
  broke: (message: string) => void,
): { post(message: To): void; terminate(): void } {
  const worker = new Worker(file, { workerData: data });
  worker.on('message', receive);
  worker.on('error', (error) => broke(error.stack ?? error.message));
  worker.on('exit', (code) => broke(`the worker thread ended with code ${code}`));
  worker.on('messageerror', (error) => broke(error.message));
  return { post: (message) => worker.postMessage(message), terminate: () => void worker.terminate() };
}
