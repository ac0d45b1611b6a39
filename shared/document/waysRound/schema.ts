import { z } from 'zod';
import { Finding, Lay } from '../lay/schema.ts';

/**
 * One run laid on different sides of things: ways that cannot be drawn over into each other, best first. Published as JSON
 * Schema by `hosewright schema ways-round`.
 */
export const WayRound = z.strictObject({
  lay: Lay,
  findings: z.array(Finding),
  waypoint: z
    .tuple([z.number(), z.number(), z.number()])
    .optional()
    .describe('mm, bay frame: where this way is furthest from the others; a waypoint there keeps the run on it'),
});

export const WaysRound = z.strictObject({
  format: z.literal('hosewright-ways-round'),
  version: z.literal(1),
  run: z.string(),
  inputHash: z.string().describe('of the project that they were laid from'),
  ways: z.array(WayRound),
});

export type WayRound = z.infer<typeof WayRound>;
export type WaysRound = z.infer<typeof WaysRound>;
