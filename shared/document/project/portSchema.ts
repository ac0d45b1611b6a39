import { z } from 'zod';
import { END_MATERIALS } from '../parts/schema.ts';
import { direction, finite, id, name, nonNegative, point, positive } from './fields.ts';

/** A port of the bay, and what is screwed on it. */
export const AdapterUse = z
  .strictObject({
    adapter: id.describe('id in the table of adapters'),
    outlet: z
      .enum(['straight', 'branch'])
      .default('straight')
      .describe('of a tee: which of its outlets is gone on from'),
    clockDeg: finite
      .optional()
      .describe(
        "how an angled adapter is turned about the axis it is screwed on along, from that seat's 12 o'clock, clockwise looking out of the part; absent = 0",
      ),
    clockRangeDeg: z
      .tuple([finite, finite])
      .refine(([from, to]) => to >= from && to - from <= 360, 'expected [from, to], at most one turn')
      .optional()
      .describe('of a taper thread: between which clocks it may come to be tight; the hose must fit at all of them'),
  })
  .refine((use) => use.clockDeg === undefined || use.clockRangeDeg === undefined, {
    message: 'either clockDeg or clockRangeDeg',
    path: ['clockRangeDeg'],
  });

export const Port = z.strictObject({
  id,
  name,
  seatPoint: point.describe('centre of the sealing seat'),
  axis: direction.describe('out of the part, along the thread'),
  up: direction.describe("12 o'clock of the port; made square to the axis when read"),
  seat: name.describe('thread or seat, such as flare-37'),
  dash: z.int().positive(),
  material: z
    .enum(END_MATERIALS)
    .optional()
    .describe('of the part that the port is in, where metals matter: raw water, boats'),
  boreMm: positive
    .optional()
    .describe("the hole in the part behind the seat, such as a turbo's drain hole; absent = by its dash size"),
  body: id.optional(),
  rigidLine: z
    .strictObject({
      clampMm: nonNegative.optional().describe('from the joint with the hose to where the line is first held'),
    })
    .optional()
    .describe(
      'the port is the end of a rigid metal line that runs along the structure; absent = it is not, or not said',
    ),
  inFirewall: z
    .boolean()
    .optional()
    .describe('true = it is in a firewall, so what is screwed in it stands fire; it is met with a bulkhead fitting'),
  adapters: z
    .array(AdapterUse)
    .optional()
    .describe(
      'what is screwed on the port, from the part outwards; the hose end goes on the last. The other outlet of a tee is another port with the same seat and adapters',
    ),
});

export type AdapterUse = z.infer<typeof AdapterUse>;
export type Port = z.infer<typeof Port>;
