import type { EndRow } from '../parts/schema.ts';

/** What was read of one crimp against what its end's table asks. mm, and each reading's distance past the limits, 0 = within. */
export interface CrimpVerdict {
  readonly outcome: 'within' | 'outside' | 'not-known';
  readonly readings: readonly { readonly readMm: number; readonly pastMm: number }[];
  /** in plain words, with its numbers */
  readonly words: string;
}

/**
 * How a crimp is measured: two handbooks of crimping machines say so (manualshive.com, "SC32" p. 10 and "GC16XD" p. 8); the tolerance itself
 * is the end maker's.
 */
export const CRIMP_MEASURING =
  'Measure at the middle of the crimp, on the flats that face each other, never over the ridges between the dies nor on a stamp; once more a quarter turn on.';

/** mm, what a caliper's last digit may be off by when figures of two decimals are compared. */
const SAME_READING_MM = 1e-9;

/**
 * Whether a finished crimp keeps its diameter: every reading from `crimpFromMm` to `crimpToMm` of the end, both included. One reading outside
 * fails the end, however the others are: a crimp that is oval holds on two sides only. Without both limits, or without a reading, it is not known.
 */
export function crimpVerdict(
  { crimpFromMm, crimpToMm }: Pick<EndRow, 'crimpFromMm' | 'crimpToMm'>,
  readingsMm: readonly number[],
): CrimpVerdict {
  if (crimpFromMm === undefined || crimpToMm === undefined)
    return { outcome: 'not-known', readings: [], words: "The table of ends lacks this crimp's finished diameter." };
  if (readingsMm.length === 0) return { outcome: 'not-known', readings: [], words: `Not measured. ${CRIMP_MEASURING}` };
  const readings = readingsMm.map((readMm) => ({ readMm, pastMm: pastLimits(readMm, crimpFromMm, crimpToMm) }));
  const outside = readings.filter(({ pastMm }) => pastMm > 0);
  const asked = `${crimpFromMm.toFixed(2)} to ${crimpToMm.toFixed(2)} mm`;
  if (outside.length === 0) return { outcome: 'within', readings, words: `All readings are within ${asked}.` };
  const said = outside.map(({ readMm, pastMm }) => `${readMm.toFixed(2)} mm is ${pastMm.toFixed(2)} mm past it`);
  const words = `Asked ${asked}: ${said.join(', ')}. This hose is not tested and not fitted: a crimp that is loose lets go under pressure, one too tight cuts the hose.`;
  return { outcome: 'outside', readings, words };
}

function pastLimits(readMm: number, leastMm: number, mostMm: number): number {
  const pastMm = Math.max(0, leastMm - readMm, readMm - mostMm);
  return pastMm > SAME_READING_MM ? pastMm : 0;
}
