import { inchesToMm } from '../../base/units.ts';
import type { Hose } from '../parts/schema.ts';

/** How near the saw must come, either way. */
export interface LengthTolerance {
  readonly toleranceMm: number;
  /** False for convoluted hose: the handbook's table is not for it, and nothing better was found. */
  readonly applies: boolean;
  readonly source: string;
}

const BANDS_INCH: readonly (readonly [upTo: number, tolerance: number])[] = [
  [12, 1 / 8],
  [24, 3 / 16],
  [36, 1 / 4],
  [48, 3 / 8],
  [72, 1 / 2],
];
const LONGER = 0.01;
const SOURCE = 'RMA Hose Handbook IP-2 (2003), Table 4-8, p. 36';

/**
 * Tolerance of a specific cut length of hose, +/- mm. Steps at 12, 24, 36, 48 and 72 in, the upper edge within its band;
 * 1 % beyond. RMA Hose Handbook IP-2 (2003), Table 4-8, p. 36; not for corrugated or convoluted hose (same place).
 * EN 853 Table 3 (from memory) is wider and lopsided: +7/-3 mm to 630 mm.
 */
export function lengthTolerance(cutLengthMm: number, core: Hose['core']): LengthTolerance {
  const band = BANDS_INCH.find(([upTo]) => cutLengthMm <= inchesToMm(upTo));
  const toleranceMm = band === undefined ? cutLengthMm * LONGER : inchesToMm(band[1]);
  return { toleranceMm, applies: core !== 'ptfe-convoluted', source: SOURCE };
}
