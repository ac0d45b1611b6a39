import { reference } from '../reference.ts';

/** One measured figure, as it stands in the results. */
export type Row = readonly [group: string, name: string, value: number, unit: string];
export const rows: Row[] = [];

function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

export function quantile(values: readonly number[], share: number): number {
  const all = sorted(values);
  return all[Math.min(all.length - 1, Math.floor(share * all.length))] as number;
}

export function timed(work: () => void): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

export function referenceMs(): number {
  return Math.min(...Array.from({ length: 50 }, () => timed(() => reference())));
}

export function pushTimes(group: string, times: readonly number[]): void {
  const unit = referenceMs();
  rows.push([group, 'time, median', quantile(times, 0.5), 'ms']);
  rows.push([group, 'time, 95 of 100', quantile(times, 0.95), 'ms']);
  rows.push([group, 'time, median, over the reference piece', quantile(times, 0.5) / unit, 'ratio']);
}
