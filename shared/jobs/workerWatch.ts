import type { Progress, Watch } from '../base/watch.ts';

/** ms. How often progress crosses to the host at most: often enough for an eye, rare enough to cost nothing. */
export const PROGRESS_EVERY_MS = 40;

/** What work in a worker watches: the flag that its host may raise, and its own clock. tell: sends progress on. */
export function workerWatch(
  { now }: { now(): number },
  cancelFlag: SharedArrayBuffer | undefined,
  tell: (progress: Progress) => void,
): Watch {
  const flag = cancelFlag && new Int32Array(cancelFlag);
  let toldAtMs = Number.NEGATIVE_INFINITY;
  return {
    isCancelled: () => flag !== undefined && Atomics.load(flag, 0) !== 0,
    now: () => now(),
    report: (progress) => {
      const nowMs = now();
      // A hose that was found is told only once.
      if (progress.lain === undefined && nowMs - toldAtMs < PROGRESS_EVERY_MS) return;
      toldAtMs = nowMs;
      tell(progress);
    },
    ...(cancelFlag === undefined ? {} : { cancelFlag }),
  };
}

/** What was thrown, in words for a report of our own mistake. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
