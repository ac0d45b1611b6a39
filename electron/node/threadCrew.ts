import { availableParallelism } from 'node:os';
import { type Crew, type FromLayWorker, MOST_WORKERS, openCrew, type ToLayWorker } from '../../shared/jobs/crew.ts';
import { startThread } from './startThread.ts';

/** What a thread that lays hoses is told to be. */
export const LAYS = 'lays';

/** The threads that lay hoses for this thread; `workerFile` is the built `jobWorker.js`. most: how many, the machine's cores if not said. */
export function threadCrew(workerFile: string, most = Math.min(MOST_WORKERS, availableParallelism())): Crew {
  const start = (receive: (message: FromLayWorker) => void, broke: (message: string) => void) =>
    startThread<ToLayWorker, FromLayWorker>(workerFile, LAYS, receive, broke);
  return openCrew({ start, most, canShareMemory: true });
}
