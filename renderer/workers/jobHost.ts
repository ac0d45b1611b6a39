import type { FromWorker, ToWorker } from '../../shared/jobs/contract.ts';
import { hostBeside } from '../../shared/jobs/hostBeside.ts';
import { hostJobs, type JobHost, type StartWorker } from '../../shared/jobs/hostJobs.ts';
import { SHORT_JOBS } from './shortJobs.ts';
import { wire } from './wire.ts';

/** ms that the worker of short jobs stays when it has nothing to do: looks and papers are asked for one after the other. */
const IDLE_MS = 30_000;

/** The window's long work, and the short looks beside it, in workers of their own so that the window never waits for them. */
export function windowJobHost(): JobHost {
  const canShareMemory = globalThis.crossOriginIsolated === true;
  return hostBeside({
    long: hostJobs(earlyWorker(), canShareMemory),
    short: hostJobs((receive, broke) => wired(newWorker(SHORT_JOBS), receive, broke), canShareMemory),
    whenIdle: (letGo) => {
      const waiting = setTimeout(letGo, IDLE_MS);
      return () => clearTimeout(waiting);
    },
  });
}

/** The first worker is started at once: it reads its program while the window reads the project. */
function earlyWorker(): StartWorker {
  let early: Worker | undefined = newWorker();
  // One that did not even start is left to the job that needs it, which starts another and hears why.
  early.onerror = () => {
    early = undefined;
  };
  return (receive, broke) => {
    const worker = early ?? newWorker();
    early = undefined;
    return wired(worker, receive, broke);
  };
}

const wired = wire<ToWorker, FromWorker>;

function newWorker(name = ''): Worker {
  return new Worker(new URL('./jobs.worker.ts', import.meta.url), { type: 'module', name });
}
