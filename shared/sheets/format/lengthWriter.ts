import { formatInches, formatLengthBoth, type InchDenominator, type Rounding } from './length.ts';

/** Lengths as a project wants them on its papers. */
export interface LengthWriter {
  readonly inches: (mm: number, rounding?: Rounding) => string;
  readonly both: (mm: number, rounding?: Rounding) => string;
  /** what to cut: rounded up */
  readonly cut: (mm: number) => string;
}

/**
 * Writes lengths with fractions of an inch down to 1/16 or 1/32 (`paperwork.finestInch`), mm beside. What is cut is rounded up
 * (long can be trimmed), tolerances, clearances, radii and slack down, limits that ask for at least something up, and what is only
 * described to the nearest.
 */
export function lengthWriter(finestInch: InchDenominator = 16): LengthWriter {
  return {
    inches: (mm, rounding) => formatInches(mm, rounding, finestInch),
    both: (mm, rounding) => formatLengthBoth(mm, rounding, finestInch),
    cut: (mm) => formatLengthBoth(mm, 'up', finestInch),
  };
}
