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
 * EN 853 Table 3 is wider and lopsided: see `en853Tolerance`.
 */
export function lengthTolerance(cutLengthMm: number, core: Hose['core']): LengthTolerance {
  const band = BANDS_INCH.find(([upTo]) => cutLengthMm <= inchesToMm(upTo));
  const toleranceMm = band === undefined ? cutLengthMm * LONGER : inchesToMm(band[1]);
  return { toleranceMm, applies: core !== 'ptfe-convoluted', source: SOURCE };
}

/**
 * mm. How far out of square a cut may be, from its high side to its low side: 0.063 in to 3/4 in nominal (-12), 0.125 in
 * above that to 2 in (-32). Undefined for larger hose, of which the table says nothing. Same handbook and table.
 */
export function cutSquarenessMm(dash: number): number | undefined {
  if (dash <= 12) return inchesToMm(0.063);
  return dash <= 32 ? inchesToMm(0.125) : undefined;
}

/** What another standard allows an assembly: longer by `overMm`, shorter by `underMm`. */
export interface LopsidedTolerance {
  readonly overMm: number;
  readonly underMm: number;
  readonly source: string;
}

const EN_853_MM: readonly (readonly [upToMm: number, toDn25: Band, toDn50: Band, larger: Band])[] = [
  [630, [7, 3], [12, 4], [25, 6]],
  [1250, [12, 4], [20, 6], [25, 6]],
  [2500, [20, 6], [25, 6], [25, 6]],
];
const EN_853_SHARES: readonly (readonly [upToMm: number, ...Band])[] = [
  [8000, 0.015, 0.005],
  [Number.POSITIVE_INFINITY, 0.03, 0.01],
];
type Band = readonly [over: number, under: number];

/**
 * What EN 853 Table 3 (as DIN 20066) allows the overall length of a wire-braid hydraulic assembly, mm: another answer than
 * the handbook's, told beside it. Its numbers are from memory; that clause and table exist was seen (EN 853:2015 5.2.2).
 * dash: nominal size, -16 = DN 25, -32 = DN 50.
 */
export function en853Tolerance(overallLengthMm: number, dash: number): LopsidedTolerance {
  const source = 'EN 853 Table 3, from memory';
  const row = EN_853_MM.find(([upToMm]) => overallLengthMm <= upToMm);
  if (row !== undefined) {
    const [overMm, underMm] = dash <= 16 ? row[1] : dash <= 32 ? row[2] : row[3];
    return { overMm, underMm, source };
  }
  const [, over, under] = EN_853_SHARES.find(([upToMm]) => overallLengthMm <= upToMm) ?? [0, 0.03, 0.01];
  return { overMm: over * overallLengthMm, underMm: under * overallLengthMm, source };
}
