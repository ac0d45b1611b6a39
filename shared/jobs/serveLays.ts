import { invariant } from '../base/invariant.ts';
import { Cancelled } from '../base/watch.ts';
import { doLayTask } from '../solve/layRuns/layTask.ts';
import { doRockTask } from '../solve/rock/rockLays.ts';
import { asMadeHere } from './asMadeHere.ts';
import type { CrewContext, FromLayWorker, ToLayWorker } from './crew.ts';
import { wordsOf, workerWatch } from './workerWatch.ts';

/** What a worker lends the protocol: a way to answer and a monotonic clock in ms. */
export interface LayWorkerSide {
  post(message: FromLayWorker): void;
  now(): number;
}

/** The half of the crew's protocol that the worker has, the same on every host. What it learns of a bay it keeps. */
export function serveLays(side: LayWorkerSide): (message: ToLayWorker) => void {
  let known: CrewContext | undefined;
  return (received) => {
    const message = asMadeHere(received);
    if (message.kind === 'context') {
      const bay = message.bay ?? known?.bay;
      invariant(bay !== undefined, 'serveLays: a context came before any bay');
      const bodies = message.bodies ?? known?.bodies ?? [];
      known = { ...message.context, bay, bodies };
      return;
    }
    try {
      invariant(known !== undefined, 'serveLays: a task came before any context');
      const watch = workerWatch(side, message.cancelFlag, (progress) => side.post({ kind: 'progress', progress }));
      const { task } = message;
      const done =
        task.how === 'rock'
          ? doRockTask(known.project, known.bodies ?? [], task, watch)
          : doLayTask(known, task, watch);
      side.post({ kind: 'done', done });
    } catch (error) {
      side.post(error instanceof Cancelled ? { kind: 'cancelled' } : { kind: 'failed', message: wordsOf(error) });
    }
  };
}
