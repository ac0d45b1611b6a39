import { z } from 'zod';
import { Clock } from '../lay/schema.ts';

/**
 * What a bent rod, digitised on the job, says of the hose that is to lie like it. Plain data: mm, degrees; arc length 0
 * is at END A.
 */
const finite = z.number();

export const Straightened = z.strictObject({
  pathLengthMm: finite.describe('of the rod, from the first point to the last along its axis'),
  cutLengthMm: finite.describe(
    'shoulder to shoulder: the path less C of each end where it was measured from seat to seat',
  ),
  cutOffMm: z.strictObject({ a: finite, b: finite }).describe('what was taken off at each end'),
  lengthErrorMm: finite.describe(
    'how far off the length may be for the scatter and the spacing of the points, +/-, about 95 %',
  ),
  clock: Clock,
  clockErrorDeg: finite.optional().describe('the same for the clock, +/-'),
  tightest: z
    .strictObject({ radiusMm: finite, arcLengthMm: finite })
    .describe(
      'least radius of the rod, the mean over a stretch of three points or more, and where its middle is; at most 10000',
    ),
  scatterMm: finite.describe('how far the points scatter about a smooth rod, in each direction across it'),
  points: z.int().describe('how many were used'),
  notes: z.array(z.string()).describe('what to look at before this hose is cut'),
});
export type Straightened = z.infer<typeof Straightened>;
