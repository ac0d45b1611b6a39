import { z } from 'zod';
import { finite, Place, point, Thing } from './places.ts';

/** What the lay report says of hands and wrenches. mm, degrees; points and directions in the bay frame. */
const clock = finite.describe(
  "deg, 0 to 360: of a wrench's handle about the nut, from the port's 12 o'clock, clockwise looking along the port's axis out of the part",
);

export const FreeSector = z.strictObject({ fromDeg: clock, widthDeg: finite.describe('on with growing clock') });

export const Swing = z
  .strictObject({
    goesOn: z.boolean().describe('false = nowhere round the nut can an open jaw be slid on it from the side'),
    widestDeg: finite.describe('how far the handle swings between two places where the jaw goes on and comes off'),
    middleDeg: clock.optional().describe('of that swing; absent = there is none'),
    middle: point.optional().describe('unit: where the handle then points in the bay'),
    sectors: z.array(FreeSector).describe('where the handle is free and the jaw goes on'),
    inTheWay: z.array(Thing).describe('what takes most of the round, most first'),
  })
  .describe('what room a wrench has round a nut');

export const SecondWrench = z.strictObject({
  hexMm: finite,
  assumed: z.boolean().describe("true = no adapter states its hex; the nut's own size was taken"),
  fits: z.boolean().describe('true = it can be held somewhere while the first one swings, with room for two hands'),
  holdDeg: clock.optional().describe('where it may be held; absent = nowhere'),
  apartDeg: finite.optional().describe('from there to the middle of the first one'),
});

export const NutHands = z
  .strictObject({
    hexMm: finite.describe('across flats'),
    hexAssumed: z.boolean().describe('true = from the table of flare nuts by dash'),
    middle: point.describe('of the nut'),
    axis: point.describe('unit; of the port, out of the part'),
    up: point.describe("unit; the port's 12 o'clock"),
    wrench: z.strictObject({
      lengthMm: finite.describe('from the middle of the nut to the end of the handle'),
      headMm: finite.describe('width of the head'),
      thicknessMm: finite.describe('of the head, along the axis of the nut'),
      handleMm: finite.describe('width of the handle'),
    }),
    swing: Swing.describe('with every hose where it lies'),
    alone: Swing.optional().describe('with no other hose there; absent = no other hose narrows it'),
    blockedBy: z
      .array(z.string())
      .optional()
      .describe('runs that leave too little swing where there is enough without'),
    crowFoot: z
      .strictObject({ widestDeg: finite, middleDeg: clock.optional() })
      .optional()
      .describe('of a crow-foot on an extension along the axis; absent = a wrench does it'),
    second: SecondWrench.optional().describe('on what the nut is screwed on; absent = the nut cannot be turned'),
  })
  .describe('one nut, and whether hands get at it');

export const ReachPlace = z.strictObject({
  at: Place,
  why: z.string().describe('what there is to look at'),
  thing: Thing.optional(),
  joint: z.enum(['a', 'b']).optional().describe('it is the joint of this end'),
  by: z.enum(['hand', 'mirror']).describe('hand: a straight arm comes there from outside the bay; mirror: none does'),
  from: point.optional().describe('unit: from the hose towards where the arm comes from'),
});

export const Hands = z
  .strictObject({
    a: NutHands.optional().describe('absent = END A has no nut'),
    b: NutHands.optional().describe('absent = END B has no nut'),
    before: z
      .array(z.string())
      .describe('runs that go on only when this one is tight: they stand where its wrench goes'),
    places: z.array(ReachPlace).describe('where to put a hand when it is looked over again, in order from END A'),
    basis: z.array(z.string()).describe('what was taken'),
  })
  .describe('wrenches, order and reach: by envelopes, not by what is in the toolbox');

export type FreeSector = z.infer<typeof FreeSector>;
export type Swing = z.infer<typeof Swing>;
export type SecondWrench = z.infer<typeof SecondWrench>;
export type NutHands = z.infer<typeof NutHands>;
export type ReachPlace = z.infer<typeof ReachPlace>;
export type Hands = z.infer<typeof Hands>;
