import type { Watch } from '../../base/watch.ts';

/** Watches for so many pieces of work that go on at once: what is told of the whole is the mean of what each has told. */
export function shareWatch(watch: Watch, count: number): (i: number) => Watch {
  const fractions = new Float64Array(count);
  return (i) => ({
    ...watch,
    report: (progress) => {
      fractions[i] = Math.max(fractions[i] as number, progress.fraction);
      watch.report({ ...progress, fraction: fractions.reduce((a, b) => a + b, 0) / count });
    },
  });
}
