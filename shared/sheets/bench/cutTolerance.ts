import { MM_PER_INCH } from '../../base/units.ts';
import type { Hose } from '../../document/parts/schema.ts';

export const CUT_TOLERANCE_SOURCE = 'RMA Hose Handbook IP-2 (2003), table 4-8';

/** Greatest length and tolerance of each band, inches. */
const BANDS_IN: readonly (readonly [number, number])[] = [
  [12, 1 / 8],
  [24, 3 / 16],
  [36, 1 / 4],
  [48, 3 / 8],
  [72, 1 / 2],
];
const BEYOND = 0.01;

/**
 * How far a specific cut length of hose may be off, plus or minus, mm; undefined for convoluted hose, which the table
 * leaves out. Length in mm above zero. Source: RMA Hose Handbook IP-2 (2003), table 4-8, page 36: 1/8 in up to 12 in,
 * 3/16 to 24, 1/4 to 36, 3/8 to 48, 1/2 to 72, 1 % beyond; a length on an edge belongs to the band below it.
 */
export function cutToleranceMm(cutLengthMm: number, hose: Pick<Hose, 'core'>): number | undefined {
  if (hose.core === 'ptfe-convoluted') return undefined;
  const band = BANDS_IN.find(([upToIn]) => cutLengthMm <= upToIn * MM_PER_INCH);
  return band ? band[1] * MM_PER_INCH : cutLengthMm * BEYOND;
}
