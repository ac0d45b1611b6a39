import type { JobName } from './contract.ts';
import type { JobHost } from './hostJobs.ts';

/**
 * Jobs that are asked for while long ones go on, end within seconds, and need nothing of what a worker keeps from job to
 * job.
 */
const SHORT: ReadonlySet<JobName> = new Set<JobName>(['sweepParts', 'makeSheets']);

export interface BesideHosts {
  /** does everything that is not short */
  readonly long: JobHost;
  /** may be closed when it is idle: its next job starts a worker anew */
  readonly short: JobHost;
  /** calls `letGo` when the short host has been idle for long enough, unless what it answers is called before */
  readonly whenIdle: (letGo: () => void) => () => void;
}

/**
 * A host whose short jobs never wait for its long ones, nor these for them: they have a worker of their own, which is
 * there only while it is needed and a while after, so that its memory is not kept for good. Once closed it starts nothing:
 * a job asked for then ends as cancelled.
 */
export function hostBeside({ long, short, whenIdle }: BesideHosts): JobHost {
  let underWay = 0;
  let isClosed = false;
  let stay: () => void = () => undefined;
  const ended = (): void => {
    underWay--;
    if (underWay === 0 && !isClosed) stay = whenIdle(() => short.close());
  };
  return {
    start(name, input, onProgress) {
      if (isClosed) return { end: Promise.resolve({ kind: 'cancelled' }), cancel: () => undefined };
      if (!SHORT.has(name)) return long.start(name, input, onProgress);
      stay();
      underWay++;
      const job = short.start(name, input, onProgress);
      void job.end.then(ended);
      return job;
    },
    close() {
      isClosed = true;
      stay();
      short.close();
      long.close();
    },
  };
}
