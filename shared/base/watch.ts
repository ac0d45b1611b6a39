import type { Vec3 } from './vec3.ts';

/** Thrown inside long work when its watcher asks it to stop; jobs turn it into the outcome `cancelled`. */
export class Cancelled extends Error {
  constructor() {
    super('cancelled');
    this.name = 'Cancelled';
  }
}

/** A hose that was found while others are still looked for: it may yet be laid otherwise. */
export interface LainHose {
  /** the run, by its id */
  readonly run: string;
  /** its centreline from END A to END B, mm, bay frame */
  readonly points: readonly Vec3[];
  readonly outsideDiameterMm: number;
}

/** How far long work has come. `fraction` never falls within one job. */
export interface Progress {
  /** 0 to 1 */
  readonly fraction: number;
  /** What is being done, in a few words for the user. */
  readonly doing: string;
  /** What was found just now, for whoever looks on; each is told once. */
  readonly lain?: LainHose;
}

/** What long work is handed to be stopped by and to report to. Both are cheap enough for inner loops. */
export interface Watch {
  isCancelled(): boolean;
  report(progress: Progress): void;
  /** Milliseconds of a monotonic clock of the host; used for budgets and timings only, never for results. */
  now(): number;
  /** Where memory is shared: the flag behind `isCancelled`, for workers that do part of the work. One Int32: 1 = stop. */
  readonly cancelFlag?: SharedArrayBuffer;
}

/** A watch that never cancels and keeps nothing: for tests and short work. */
export const UNWATCHED: Watch = { isCancelled: () => false, report: () => undefined, now: () => 0 };

export function stopIfCancelled(watch: Watch): void {
  if (watch.isCancelled()) throw new Cancelled();
}

/** The part [from, to] of a larger job's progress, for a step inside it. */
export function partOf(watch: Watch, from: number, to: number): Watch {
  return {
    ...watch,
    report: (progress) => watch.report({ ...progress, fraction: from + (to - from) * progress.fraction }),
  };
}
