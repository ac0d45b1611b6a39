import type { ToLayWorker } from '../../shared/jobs/crew.ts';
import { serveLays } from '../../shared/jobs/serveLays.ts';

declare const self: DedicatedWorkerGlobalScope;

const receive = serveLays({ post: (message) => self.postMessage(message), now: () => performance.now() });
self.onmessage = (event: MessageEvent<ToLayWorker>) => receive(event.data);
