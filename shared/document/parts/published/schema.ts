import { z } from 'zod';

/**
 * Tables of other people's figures that ship with the program: for looking up and for proposing, never parts by themselves.
 * A row says what was printed, what of it was read and what is only remembered, and where it stands.
 */
const positive = z.number().positive();
const name = z.string().min(1);
const inches = z.string().regex(/^(\d+ )?\d+(\/\d+)?$/, 'expected inches as a whole number, a fraction, or both');
const read = z.enum(['seen', 'memory']).describe('seen = read in a copy of the source; memory = from memory');

/** Of how many fittings a cut-off factor is the sum: one, the pair of a hose with two alike, or not said in what was read. */
export const COUNTS = ['one', 'pair', 'not-said'] as const;

/** One cell of a table of cut-off factors: what is taken off a hose's overall length for its fittings. */
export const PublishedCutOff = z.strictObject({
  table: name,
  fitting: name.describe('as the table names it'),
  size: name.describe('as printed'),
  dash: z.int().positive(),
  form: z.enum(['nut', 'flange']).optional().describe('absent = not said in what was read'),
  bendAngleDeg: z.number().min(0).max(180).optional().describe('absent = not said in what was read'),
  printedIn: positive.describe('inches, as printed'),
  counts: z.enum(COUNTS),
  oneFittingMm: positive.optional().describe('C of one fitting; absent where the table does not say it or is doubted'),
  doubt: name.optional().describe('why the figure is not used'),
  read,
  source: name,
});

/** One size of the 37 degree flare: its tube, thread and nut. */
export const FlareSize = z.strictObject({
  dash: z.int().positive(),
  tubeOutsideIn: inches,
  thread: name.describe('inches and threads an inch'),
  threadRead: read,
  threadSource: name,
  nutHexIn: inches.optional().describe('across flats; absent = not in the table'),
  nutHexMm: positive.optional(),
  nutHexRead: read.optional(),
  nutHexSource: name.optional(),
});

export type PublishedCutOff = z.infer<typeof PublishedCutOff>;
export type FlareSize = z.infer<typeof FlareSize>;
