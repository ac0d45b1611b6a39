import { z } from 'zod';
import { FLUIDS } from '../parts/fluids.ts';
import { AsBuilt } from './benchSchema.ts';
import { direction, finite, id, name, nonNegative, point, positive } from './fields.ts';

export const HoseClamps = z
  .strictObject({
    count: z.int().positive(),
    fromHoseEndMm: nonNegative.optional().describe('from the cut of the hose to the edge of the nearest band'),
    bandMm: positive.optional().describe('width of a band'),
    spring: z.boolean().optional().describe('true = they hold by the tension of a spring alone'),
  })
  .describe('what holds the hose on a barb, such as worm-drive bands');

/** A run: a hose wanted between two ports, what it carries, what holds it, and what the bench measured of it. */
export const RunEnd = z.strictObject({
  port: id,
  end: id.describe('id in the table of ends'),
  clockDeg: finite
    .optional()
    .describe(
      "own clock of an angled end about the port axis, from the port's 12 o'clock, clockwise looking along the axis out of the part; absent = free, the program chooses",
    ),
  hoseClamps: HoseClamps.optional().describe('of an end whose joint is clamped; absent = not known'),
});

export const SEALS = ['grommet', 'bulkhead-fitting', 'stuffing-box', 'none'] as const;
export const Support = z.strictObject({
  id,
  kind: z
    .enum(['clamp', 'pass-through', 'waypoint'])
    .describe('a clamp and a pass-through hold place and direction; a waypoint only guides the way'),
  name: name.optional().describe('what the shop calls it; absent = its kind and its place'),
  point,
  axis: direction.optional().describe('along the hose, from END A to END B; needed for a clamp and a pass-through'),
  body: id.optional().describe('what the support is fixed to and moves with; absent = the chassis'),
  seal: z
    .enum(SEALS)
    .optional()
    .describe('of a pass-through: what closes the hole round the hose and keeps its edge off'),
  inFirewall: z
    .boolean()
    .optional()
    .describe('of a pass-through: true = it goes through a firewall, so what closes it stands fire'),
  holeMm: positive
    .optional()
    .describe(
      'of a pass-through: what must go through it, hose or end, is less across than this, its grommet taken out',
    ),
  part: id.optional().describe('of a clamp: id in the table of clamps'),
});

/** A stretch of a laid hose that stays as it lies when the rest of the run is laid again. */
export const Lock = z.strictObject({
  id,
  after: id.optional().describe('the last support before it from END A; absent = it comes before all of them'),
  points: z.array(point).min(2).describe('the centreline of the stretch from END A to END B, a few mm apart'),
  startAxis: direction.describe('along the hose where the stretch starts, from END A to END B'),
  endAxis: direction.describe('and where it ends'),
});

export const PURPOSES = [
  'turbo-oil-feed',
  'turbo-oil-drain',
  'turbo-water',
  'oil-pressure',
  'oil-suction',
  'oil-cooler',
  'oil-return',
  'fuel',
  'fuel-fill',
  'fuel-vent',
  'coolant',
  'raw-water',
  'wet-exhaust',
  'breather',
  'other',
] as const;
export const FLOWS = ['a-to-b', 'b-to-a'] as const;
export const BEARINGS = ['ball', 'journal'] as const;
export const TURBO_SIDES = ['a', 'b'] as const;

export const Service = z.strictObject({
  purpose: z.enum(PURPOSES),
  fluid: z.enum(FLUIDS),
  pressureKpa: finite.describe("working pressure above the bay's air; below zero on suction"),
  temperatureC: finite.describe('of the fluid, running'),
  flowLPerMin: nonNegative.optional(),
  viscosityMm2PerS: positive
    .optional()
    .describe('kinematic, of the fluid running (1 mm2/s = 1 cSt); absent = estimated for its kind and temperature'),
  bearing: z.enum(BEARINGS).optional().describe('of the turbo that an oil feed goes to; absent = not known'),
  restrictorMm: nonNegative
    .optional()
    .describe('bore of the restrictor at the turbo, of a turbo oil feed; 0 = none is fitted, absent = not said'),
  turboPressureKpa: nonNegative
    .optional()
    .describe('of a turbo oil feed: measured after the restrictor, oil hot, at maximum rpm'),
  shaftTiltDeg: nonNegative
    .max(90)
    .optional()
    .describe("of a turbo oil drain: how far the turbo's shaft is off level, car level"),
  turboAt: z.enum(TURBO_SIDES).optional().describe('of turbo water: the end of the hose that is at the turbo'),
  housingTurnDeg: nonNegative
    .max(180)
    .optional()
    .describe('of turbo water: how far the centre housing is turned about the shaft from its drain straight down'),
});

/** A month or a day: 2026-05, 2026-05-12. */
export const MADE_ON = /^\d{4}-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?$/;

export const Run = z
  .strictObject({
    id,
    name,
    a: RunEnd.describe('END A'),
    b: RunEnd.describe('END B'),
    service: Service,
    hose: id.describe('id in the table of hoses'),
    sleeve: id.optional().describe('id in the table of sleeves'),
    slack: nonNegative.max(0.5).default(0.05).describe('live length over taut length, less one'),
    cutLengthMm: positive.optional().describe('a hose already cut; then slack is measured, not wanted'),
    asBuilt: AsBuilt.optional().describe('the hose that was made, once it is'),
    supports: z.array(Support).default([]).describe('in order from END A to END B'),
    flow: z
      .enum(FLOWS)
      .optional()
      .describe('which way the fluid goes; absent = from END A to END B. On suction the pump is where it goes to'),
    madeOn: z
      .string()
      .regex(MADE_ON, 'expected a year and a month such as 2026-05, with a day if known')
      .optional()
      .describe('when the hose itself was made, from the date printed along it; its life is counted from there'),
    bledAtCrest: z
      .boolean()
      .optional()
      .describe('true = a bleed is fitted where this hose is highest, so it may have a high point'),
    onePlane: z
      .array(id)
      .optional()
      .describe(
        'stretches that shall lie in one plane each, named by where they begin: a for END A, or the id of a clamp or pass-through; each goes on to the next place that holds the hose',
      ),
    locks: z.array(Lock).optional().describe('stretches that stay as they lie, in order from END A to END B'),
  })
  .superRefine((run, ctx) => {
    run.supports.forEach((s, i) => {
      if (s.kind !== 'waypoint' && s.axis === undefined)
        ctx.addIssue({ code: 'custom', message: `a ${s.kind} needs its axis`, path: ['supports', i, 'axis'] });
    });
  });

export type HoseClamps = z.infer<typeof HoseClamps>;
export type RunEnd = z.infer<typeof RunEnd>;
export type Support = z.infer<typeof Support>;
export type Lock = z.infer<typeof Lock>;
export type Service = z.infer<typeof Service>;
export type Purpose = Service['purpose'];
export type Fluid = Service['fluid'];
export type Run = z.infer<typeof Run>;
