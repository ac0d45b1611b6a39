import { z } from 'zod';

/** What the lay report says of places, of things a hose comes near to, and of how ends stand. mm, bay frame. */
export const finite = z.number();
export const point = z.tuple([finite, finite, finite]);

/** mm. Between points of a line that is only to be drawn. */
export const DRAWN_STEP_MM = 12;
export const DrawnLine = z
  .array(point)
  .describe(
    `where the hose then lies, shoulder A to shoulder B, a point about every ${DRAWN_STEP_MM} mm to a tenth: for drawing, not for measuring`,
  );

export const AdapterPose = z
  .strictObject({
    id: z.string().describe('in the table of adapters'),
    clockDeg: finite.describe("about the axis it is screwed on along, from that seat's 12 o'clock"),
    points: z.array(point).describe('middle of its body: the seat it stands on, its bend, the seat it offers'),
    branch: z.array(point).optional().describe('of a tee: from where its axes meet to its other outlet'),
    diameterMm: finite,
  })
  .describe('an adapter as it stands under an end');

export const EndRoom = z
  .strictObject({ roomMm: finite, part: z.string(), point, adapter: z.string().optional() })
  .describe(
    "least room round the end itself, bend to mouth, at its collar's radius, or round an adapter under it, which is then named; negative = it stands in that part. Its own port is let be",
  );

export const EndPose = z.strictObject({
  seatPoint: point.describe('of the port, or of the last adapter on it'),
  bendPoint: point.describe(
    'where port axis and hose axis meet; for a straight end on the axis, for one of 180 degrees the middle of its turn',
  ),
  shoulderPoint: point,
  mouthPoint: point,
  body: z
    .array(point)
    .optional()
    .describe('middle of the end from seat to mouth; absent = straight from seat over bend and shoulder to mouth'),
  adapters: z.array(AdapterPose).optional().describe('what stands between port and end, from the part outwards'),
  outletAxis: point.describe('unit; the way the end faces its port'),
  up: point.describe(
    "unit, square to the hose axis at the shoulder: the clock reference; an angled end's own outlet direction there",
  ),
  hoseAxis: point.describe('unit; along the hose axis from the end into the hose'),
  ownClockDeg: finite.describe("about the port axis from the port's 12 o'clock; 0 for straight ends"),
  room: EndRoom.optional(),
  ownClockChosen: z.boolean().describe('true = a swivel the program turned; false = stated by the user or straight'),
});

export const Place = z.strictObject({
  arcLengthMm: finite.describe('from shoulder A'),
  point,
});

export const Thing = z.strictObject({
  kind: z.enum(['skin', 'run']),
  id: z.string(),
  part: z.string().optional().describe('name of the bay part, for a skin'),
});

export const Clearance = z.strictObject({
  to: Thing,
  clearanceMm: finite.describe(
    'from the surface of hose or sleeve to the thing; the least along the run outside its own port zones',
  ),
  provenAtLeastMm: finite.describe('no place along the run is nearer than this'),
  requiredMm: finite.describe('what the rule asks for, scan uncertainty included'),
  at: Place,
  onThing: point,
});

export type AdapterPose = z.infer<typeof AdapterPose>;
export type EndPose = z.infer<typeof EndPose>;
export type Place = z.infer<typeof Place>;
export type Thing = z.infer<typeof Thing>;
export type Clearance = z.infer<typeof Clearance>;
