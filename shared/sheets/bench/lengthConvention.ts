import { lengthsOf } from '../../document/lay/lengthsOf.ts';
import type { SheetRun } from '../input.ts';

/** The convention of the overall length in words, by which ends are angled or banjos. A number without it is scrap. */
export function overallConvention({ a, b }: SheetRun): string {
  const lengths = lengthsOf({ cutLengthMm: 0, a: a.end, b: b.end });
  const { from, to } = lengths.find(({ convention }) => convention === 'seat-to-seat') as (typeof lengths)[number];
  return `from ${from} to ${to}, measured parallel to the straight hose`;
}

/** What cut length means, in words. */
export const CUT_CONVENTION = 'from shoulder to shoulder: the bare hose, as the saw cuts it';
