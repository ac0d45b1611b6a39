/** A worker of the browser as the protocols of `shared/jobs` see one. */
export function wire<To, From>(
  worker: Worker,
  receive: (message: From) => void,
  broke: (message: string) => void,
): { post(message: To): void; terminate(): void } {
  worker.onmessage = (event: MessageEvent<From>) => receive(event.data);
  worker.onerror = (event) => broke(event.message || 'the worker could not be started');
  worker.onmessageerror = () => broke('an answer of the worker could not be read');
  return { post: (message) => worker.postMessage(message), terminate: () => worker.terminate() };
}
