import { z } from 'zod';
import { Finding, Lay } from '../lay/schema.ts';

/**
 * An end trial: one run laid with every pair of ends on the shelf that fit it, best first. Published as JSON Schema by
 * `hosewright schema end-trial`. The parts of the ranking are told one by one; there is no score.
 */
export const TrialEntry = z.strictObject({
  ends: z.strictObject({ a: z.string(), b: z.string() }).describe('ids in the table of ends'),
  bendsDeg: z.strictObject({ a: z.number(), b: z.number() }),
  lay: Lay,
  findings: z.array(Finding),
  heatRoomC: z
    .number()
    .optional()
    .describe(
      'how far the liner stays under its limit at its hottest, likely value; absent = nothing hot is in the bay',
    ),
  cost: z
    .number()
    .optional()
    .describe("of the hose and both ends, in the user's own money; absent = one of their prices is not stated"),
});

export const EndTrial = z.strictObject({
  format: z.literal('hosewright-end-trial'),
  version: z.literal(1),
  run: z.string(),
  inputHash: z.string().describe('of the project that the trial was made from'),
  tried: z.int().describe('pairs of ends that fit hose and ports'),
  entries: z.array(TrialEntry).describe('the pairs with which the run lies clean, best first'),
});

export type TrialEntry = z.infer<typeof TrialEntry>;
export type EndTrial = z.infer<typeof EndTrial>;
