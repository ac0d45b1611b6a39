import { inchesToMm } from '../../base/units.ts';

/** Ball that falls through a bent hose of a dash size, in; hose bores of the same circular's Table 9-3. */
export const BALL_INCH: Readonly<Record<number, number>> = {
  4: 5 / 64,
  5: 9 / 64,
  6: 13 / 64,
  8: 9 / 32,
  10: 3 / 8,
  12: 1 / 2,
  16: 47 / 64,
  20: 61 / 64,
};

export const BALL_SOURCE =
  'FAA AC 43.13-1B Table 9-4 (from memory), for hose of its own bores; that a ball falls through freely: MIL-DTL-8790F 3.7.1';

/** mm. The ball that shows a bore to be open, by dash size; undefined where the table has none. boreMm: narrowest of the assembly, where it is known: a ball as wide says nothing. */
export function ballMm(dash: number, boreMm?: number): number | undefined {
  const inches = BALL_INCH[dash];
  if (inches === undefined) return undefined;
  const mm = inchesToMm(inches);
  return boreMm !== undefined && mm >= boreMm ? undefined : mm;
}
