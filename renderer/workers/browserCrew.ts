import { type Crew, type FromLayWorker, MOST_WORKERS, openCrew, type ToLayWorker } from '../../shared/jobs/crew.ts';
import { wire } from './wire.ts';

/** The workers that lay hoses for the worker that does the window's jobs, as many as the machine does at once. */
export function browserCrew(): Crew {
  return openCrew({
    start: (receive, broke) => {
      const worker = new Worker(new URL('./lays.worker.ts', import.meta.url), { type: 'module' });
      return wire<ToLayWorker, FromLayWorker>(worker, receive, broke);
    },
    most: Math.min(MOST_WORKERS, navigator.hardwareConcurrency),
    canShareMemory: globalThis.crossOriginIsolated === true,
  });
}
