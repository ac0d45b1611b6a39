import { z } from 'zod';
import { finite, id, positive, relativePath } from './fields.ts';

/** What the bench writes down of a hose that exists: its measures, its crimps, its proof test, and what was seen of it later. */
const day = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'expected a day such as 2026-05-12')
  .describe('year, month, day');
const readings = z.array(positive).min(1).optional();

export const ProofRecord = z
  .strictObject({
    on: day,
    pressureKpa: positive.describe('held'),
    holdS: positive.optional(),
    clockDeg: finite
      .optional()
      .describe('between two angled ends as it was tested; from then on it stays. Absent = not written down'),
    failed: z.boolean().optional().describe('true = it leaked, or an end moved'),
  })
  .describe('the proof test of the finished hose, with liquid');

export const SystemTestRecord = z
  .strictObject({
    on: day,
    pressureKpa: positive.describe('held'),
    holdS: positive.optional().describe('how long it held'),
    failed: z.boolean().optional().describe('true = it lost pressure'),
  })
  .describe('the test, in the bay, of the system that the hose belongs to: an exhaust, the fuel of a boat');

export const Inspection = z.strictObject({
  on: day,
  found: z.string().min(1).optional().describe('what is not as it should be; absent = nothing was found'),
  closedOn: day.optional().describe('when that was put right; absent = it is open'),
  photo: relativePath.optional().describe('of it, relative to the project file'),
});

const MEASURES = [
  'cutLengthMm',
  'clockDeg',
  'crimpMm',
  'proof',
  'systemTest',
  'fittedOn',
  'roll',
  'inspections',
] as const;

export const AsBuilt = z
  .strictObject({
    cutLengthMm: positive.optional().describe('measured shoulder to shoulder'),
    clockDeg: finite
      .optional()
      .describe('measured between two angled ends, in the convention of the clock; absent = as planned'),
    roll: id.optional().describe('id in the table of rolls: what it was cut from; its cure date counts for its age'),
    crimpMm: z
      .strictObject({ a: readings, b: readings })
      .optional()
      .describe('read of the finished crimps, mm: on the flats, at the middle of the crimp, more than once'),
    proof: ProofRecord.optional(),
    systemTest: SystemTestRecord.optional(),
    fittedOn: day.optional().describe('when it went into the bay'),
    inspections: z.array(Inspection).optional().describe('when it was looked over again, in order'),
    note: z.string().optional().describe('with what it was measured, by whom, when'),
  })
  .refine((built) => MEASURES.some((measure) => built[measure] !== undefined), {
    message: `a hose as built needs something that was measured: ${MEASURES.join(', ')}`,
    path: ['cutLengthMm'],
  });

export type ProofRecord = z.infer<typeof ProofRecord>;
export type SystemTestRecord = z.infer<typeof SystemTestRecord>;
export type Inspection = z.infer<typeof Inspection>;
export type AsBuilt = z.infer<typeof AsBuilt>;
