import { parentPort } from 'node:worker_threads';
import { invariant } from '../../shared/base/invariant.ts';
import { serveLays } from '../../shared/jobs/serveLays.ts';

/** Makes this worker thread lay hoses for the thread that started it. */
export function serveLaysHere(): void {
  invariant(parentPort, 'serveLaysHere: runs as a worker thread only');
  const parent = parentPort;
  parent.on('message', serveLays({ post: (message) => parent.postMessage(message), now: () => performance.now() }));
}
