import type { SheetRun } from '../input.ts';

function seatOf(letter: 'A' | 'B', bendAngleDeg: number): string {
  return bendAngleDeg > 0 ? `the seat centreline of END ${letter}` : `the seat of END ${letter}`;
}

/** The convention of the overall length in words, by which ends are angled. A number without it is scrap. */
export function overallConvention(run: SheetRun): string {
  const from = seatOf('A', run.a.end.bendAngleDeg);
  const to = seatOf('B', run.b.end.bendAngleDeg);
  return `from ${from} to ${to}, measured parallel to the straight hose`;
}

/** What cut length means, in words. */
export const CUT_CONVENTION = 'from shoulder to shoulder: the bare hose, as the saw cuts it';
