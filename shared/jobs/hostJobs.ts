import type { Progress } from '../base/watch.ts';
import type { FromWorker, JobEnd, JobInput, JobName, ToWorker } from './contract.ts';

/** A job under way. `end` always settles and never rejects. */
export interface RunningJob<N extends JobName> {
  readonly end: Promise<JobEnd<N>>;
  /** Ask once: the job stops at its next look, where memory is shared. Ask twice: its worker is thrown away. */
  cancel(): void;
}

export interface JobHost {
  start<N extends JobName>(name: N, input: JobInput<N>, onProgress?: (progress: Progress) => void): RunningJob<N>;
  /** Ends the worker; jobs not ended yet end as cancelled. */
  close(): void;
}

/** A worker as the host sees it. */
export interface WorkerHandle {
  post(message: ToWorker): void;
  terminate(): void;
}

/** Starts a worker. `receive` is given what it posts; `broke` is called when it dies of its own. */
export type StartWorker = (receive: (message: FromWorker) => void, broke: (message: string) => void) => WorkerHandle;

interface Waiting {
  readonly message: ToWorker;
  readonly onProgress: (progress: Progress) => void;
  readonly settle: (end: JobEnd<JobName>) => void;
}

/**
 * The host's half of the protocol: one worker, started when first needed, one job at a time in the order asked. Where
 * memory cannot be shared a job is cancelled by throwing its worker away; after `failed` the same is done, since the
 * state of a worker that failed is unknown. Jobs that wait are then done by the next worker.
 */
export function hostJobs(startWorker: StartWorker, canShareMemory: boolean): JobHost {
  const queue: Waiting[] = [];
  let worker: WorkerHandle | undefined;
  let lastId = 0;

  function throwWorkerAway(): void {
    worker?.terminate();
    worker = undefined;
  }
  function endFirst(end: JobEnd<JobName>): void {
    if (end.kind === 'failed') throwWorkerAway();
    queue.shift()?.settle(end);
    sendFirst();
  }
  function newWorker(): WorkerHandle {
    const mine: WorkerHandle = startWorker(
      (message) => {
        const first = queue[0];
        if (worker !== mine || first === undefined || message.id !== first.message.id) return;
        if (message.kind === 'progress') first.onProgress(message.progress);
        else endFirst(message.end);
      },
      (message) => {
        if (worker !== mine) return;
        throwWorkerAway();
        if (queue.length > 0) endFirst({ kind: 'failed', message });
      },
    );
    return mine;
  }
  function sendFirst(): void {
    const first = queue[0];
    if (first === undefined) return;
    worker ??= newWorker();
    worker.post(first.message);
  }
  function cancel(waiting: Waiting): void {
    const place = queue.indexOf(waiting);
    if (place < 0) return;
    if (place > 0) {
      queue.splice(place, 1);
      waiting.settle({ kind: 'cancelled' });
    } else if (!raise(waiting.message.cancelFlag)) {
      throwWorkerAway();
      endFirst({ kind: 'cancelled' });
    }
  }

  return {
    start<N extends JobName>(name: N, input: JobInput<N>, onProgress: (p: Progress) => void = () => undefined) {
      const flag = canShareMemory ? { cancelFlag: new SharedArrayBuffer(4) } : {};
      lastId++;
      const message = { id: lastId, name, input, ...flag } as ToWorker;
      let settle: Waiting['settle'] = () => undefined;
      const end = new Promise<JobEnd<JobName>>((resolve) => {
        settle = resolve;
      });
      const waiting: Waiting = { message, onProgress, settle };
      queue.push(waiting);
      if (queue.length === 1) sendFirst();
      return { end: end as Promise<JobEnd<N>>, cancel: () => cancel(waiting) };
    },
    close() {
      throwWorkerAway();
      for (const waiting of queue.splice(0)) waiting.settle({ kind: 'cancelled' });
    },
  };
}

/** Raises a flag; false when there is none to raise or it was up already. */
function raise(flag: SharedArrayBuffer | undefined): boolean {
  return flag !== undefined && Atomics.exchange(new Int32Array(flag), 0, 1) === 0;
}
