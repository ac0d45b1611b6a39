import { z } from 'zod';
import { Clearance, DrawnLine, EndRoom, finite, Place, point } from './places.ts';

/** What the lay report says of a hose that does not lie as planned: bodies moved, taper threads elsewhere, made otherwise. mm, degrees, N. */
export const RockPose = z
  .strictObject({
    name: z.string().describe('in words, such as: engine at roll +2, pitch -1 degrees, z +3 mm; or: at rest'),
    bodies: z.array(
      z.strictObject({
        body: z.string(),
        rollDeg: finite,
        pitchDeg: finite,
        yawDeg: finite,
        shiftMm: point,
      }),
    ),
  })
  .describe("where the moving bodies stand, as the project's motions have it; bodies not named stand as scanned");

export const ROCK_OUTCOMES = ['lies', 'tight', 'too-short', 'unsettled'] as const;

export const RockExtreme = z.strictObject({
  pose: RockPose,
  outcome: z
    .enum(ROCK_OUTCOMES)
    .describe(
      'lies: lies still there; tight: shorter than its shortest lay there, so it pulls on its ends or bends tighter than its limit; too-short: does not reach, so there is no hose to measure; unsettled: no lay at rest was found',
    ),
  slackLeftMm: finite.describe(
    'of the stretch between two places that hold it that has least: its length less its shortest lay there; below zero = tight',
  ),
  missingMm: finite.optional().describe('too-short only: what it lacks to reach in a straight line'),
  minRadius: z.strictObject({ provenAtLeastMm: finite, at: Place }).optional(),
  tightest: Clearance.optional().describe(
    'the clearance that is then furthest under, or least over, what is asked; the place is on the hose as it lies there',
  ),
  rubs: z
    .array(Clearance)
    .optional()
    .describe('of bare steel braid: what it then comes near to that it saws, other hoses among it'),
  endRoom: EndRoom.extend({ end: z.enum(['a', 'b']) })
    .optional()
    .describe('least room round either end to what moves against it, where there is none to spare'),
  tensionN: finite
    .optional()
    .describe(
      'greatest pull along the hose where it is held; below zero = it pushes. As good as its bending stiffness',
    ),
  twistDeg: finite
    .optional()
    .describe('of the stretch that is wrung most, right-handed about the hose from END A to END B'),
  torqueNmm: finite.optional().describe('with which that stretch is wrung; as good as its torsional stiffness'),
  line: DrawnLine.optional(),
});

export const Rock = z
  .strictObject({
    carried: z.boolean().describe('true = all that holds the hose moves as one, and the hose with it: its shape stays'),
    holds: z
      .array(z.strictObject({ id: z.string(), body: z.string() }))
      .describe(
        'what holds the hose from END A to END B, a and b among it, and the body each is fixed to; a proposed clamp is taken to be fixed where both its neighbours are, else to what is nearest',
      ),
    extremes: z
      .array(RockExtreme)
      .describe(
        'the first is at rest, which may differ a little from the lay: the straight tails are how a hose is fitted, and nothing holds them when its ends move',
      ),
    worst: z
      .strictObject({
        slackLeft: z.int(),
        minRadius: z.int().optional(),
        clearance: z.int().optional(),
        tension: z.int().optional(),
        twist: z.int().optional(),
      })
      .describe('which extreme is worst in what: numbers in extremes'),
    tightAt: z
      .strictObject({ share: finite, extreme: z.int() })
      .optional()
      .describe(
        'share of the motion at which the hose first goes tight, on the way from rest to that extreme: under 1 = within the motion; absent = not within twice the motion',
      ),
  })
  .describe(
    'the hose as it lies, ends and clocks as tightened at rest, when bodies stand at the extremes of their motion',
  );

const SIDES = ['a', 'b'] as const;

export const TaperPose = RockExtreme.omit({ pose: true })
  .extend({
    name: z.string().describe('in words, such as: npt-elbow at END A at 45 degrees'),
    clocks: z.array(z.strictObject({ end: z.enum(SIDES), adapter: z.string(), clockDeg: finite })),
    ownClockDeg: z
      .strictObject({ a: finite, b: finite })
      .describe('own clocks of the ends there: as laid, or as a swivel is turned where the hose needs it'),
    room: z.strictObject({ a: EndRoom.optional(), b: EndRoom.optional() }).describe('as at the ends of the lay'),
  })
  .describe('the hose at one clock of its taper threads');

export const Taper = z
  .strictObject({
    ranges: z.array(
      z.strictObject({ end: z.enum(SIDES), adapter: z.string(), fromDeg: finite, toDeg: finite, laidAtDeg: finite }),
    ),
    poses: z.array(TaperPose),
    worst: z
      .strictObject({
        slackLeft: z.int(),
        minRadius: z.int().optional(),
        clearance: z.int().optional(),
        room: z.int().optional(),
        twist: z.int().optional(),
      })
      .describe('which pose is worst in what: numbers in poses'),
  })
  .describe(
    'the hose as laid for the middle of the ranges in which the taper threads of its ports come tight, same cut length and clock, at both limits of each range and in between, at most 15 degrees apart',
  );

export const BuiltPose = RockExtreme.omit({ pose: true })
  .extend({
    name: z.string().describe('in words, such as: cut 4.8 mm short; or: as measured'),
    cutLengthMm: finite,
    clockDeg: finite.optional().describe('between two angled ends, as made'),
    ownClockDeg: z
      .strictObject({ a: finite, b: finite })
      .describe('own clocks of the ends there: as planned, or as a swivel is turned where the hose needs it'),
    room: z.strictObject({ a: EndRoom.optional(), b: EndRoom.optional() }).describe('as at the ends of the lay'),
  })
  .describe('the hose made with another length or clock than planned, fitted to the same ports, clamps where they are');

export const Tolerance = z
  .strictObject({
    lengthMm: finite
      .optional()
      .describe('of the cut, +/-, by the published table; absent for convoluted hose, which has none'),
    clockDeg: finite.optional().describe('of the clock, +/-; absent where there is none'),
    poses: z.array(BuiltPose).describe('cut short, cut long, clock missed either way: each by its whole tolerance'),
  })
  .describe('what an error within the tolerance does to the hose');

export type RockPose = z.infer<typeof RockPose>;
export type RockExtreme = z.infer<typeof RockExtreme>;
export type Rock = z.infer<typeof Rock>;
export type TaperPose = z.infer<typeof TaperPose>;
export type Taper = z.infer<typeof Taper>;
export type BuiltPose = z.infer<typeof BuiltPose>;
export type Tolerance = z.infer<typeof Tolerance>;
