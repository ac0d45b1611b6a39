import { z } from 'zod';
import { Hands } from './hands.ts';
import { Heat } from './heat.ts';
import { Clearance, DrawnLine, EndPose, finite, Place, point, Thing } from './places.ts';
import { BuiltPose, Rock, Taper, Tolerance } from './poses.ts';

export { AdapterPose, Clearance, EndPose, EndRoom, Place, Thing } from './places.ts';
export { BuiltPose, ROCK_OUTCOMES, Rock, RockExtreme, RockPose, Taper, TaperPose, Tolerance } from './poses.ts';

/**
 * The lay report: what the program answers, published as JSON Schema by `hosewright schema lay-report`. Plain data:
 * mm, degrees, kPa; points and directions in the bay frame. Arc length 0 is shoulder A (the saw's cut at END A) and
 * grows along the centreline to shoulder B, so a place on the hose has the same number in the bay, on the straight
 * view and on the bench.
 */

export const Clock = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('angle'),
    deg: finite.describe(
      "0 to 360: hose straight, looking along it from the near end, near outlet at 6 o'clock, counter-clockwise to the far outlet",
    ),
    toleranceDeg: finite,
  }),
  z.strictObject({ kind: z.literal('free'), reason: z.enum(['a-straight', 'b-straight', 'both-straight']) }),
]);

/** What a service or the project asks of a hose's shape beyond radius and clearance. */
export const WISHES = ['fall', 'no-crest', 'calm-suction', 'one-plane', 'bundle'] as const;

export const OUTCOMES = ['laid', 'near-miss', 'no-way'] as const;

export const LaySupport = z.strictObject({
  id: z.string(),
  kind: z.enum(['clamp', 'pass-through', 'waypoint']),
  proposed: z.boolean().describe('true = the program asks for this clamp, the user did not place it'),
  at: Place,
  axis: point,
});

export const Profile = z
  .strictObject({
    reachMm: finite.describe(
      'things further from the hose than this are not told apart; a clearance equal to it reads: at least',
    ),
    arcLengthMm: z.array(finite).describe('from shoulder A to shoulder B, a few mm apart'),
    radiusMm: z.array(finite).describe('centreline radius at each place, at most 10000'),
    heightMm: z.array(finite).describe("of the centreline above the bay's zero"),
    near: z.array(
      z.strictObject({
        to: Thing,
        clearanceMm: z.array(finite).describe('hose surface to the thing at each place, at most reachMm'),
        askedMm: z.array(finite).describe('what is asked at each place; less near ports, clamps and pass-throughs'),
        parts: z.array(z.string()),
        part: z.array(z.int()).describe('number in parts of the nearest one at each place; -1 = beyond reach'),
      }),
    ),
  })
  .describe('what there is along the hose, for drawing; the verdicts are the proven values of the lay');

export const Breath = z
  .strictObject({
    change: finite.describe('of the live length under pressure, as a ratio: 0.02 = 2 % longer'),
    liveLengthMm: finite,
    taut: z.boolean().describe('true = the hose is then shorter than its taut lay and pulls on its ends'),
    minRadius: z.strictObject({ provenAtLeastMm: finite, at: Place }).optional(),
    tightest: Clearance.optional().describe('the clearance that is then furthest under, or least over, what is asked'),
    line: DrawnLine.optional(),
  })
  .describe('the same hose, ends where they stand, at the length that pressure gives it');

export const Flow = z
  .strictObject({
    speedMPerS: finite.describe("in the hose's bore"),
    reynolds: finite.describe('there, at the likeliest viscosity'),
    regime: z.enum(['laminar', 'either', 'turbulent']),
    dropKpa: z
      .strictObject({ low: finite, likely: finite, high: finite })
      .describe('friction from end to end, ends included, and the band in which it is known'),
    hoseKpa: finite.describe('of the likely drop: the hose as if straight'),
    bendsKpa: finite,
    endsKpa: finite,
    headKpa: finite.describe(
      'what the fluid gains by falling from where it comes from to where it goes; below zero = it climbs',
    ),
    smoothBoreKpa: finite.optional().describe('of a convoluted hose: the likely drop if its bore were smooth'),
    basis: z.array(z.string()).describe('what was taken where nothing was stated'),
  })
  .describe('what the wanted flow does in the hose as it lies: an estimate');

export const LENGTH_CONVENTIONS = [
  'shoulder-to-shoulder',
  'mouth-to-mouth',
  'seat-to-seat',
  'flare-to-flare',
  'elbow-centreline',
  'banjo-eye',
  'end-of-nut',
] as const;
/** What of an end a length goes to. */
export const LENGTH_DATUMS = ['shoulder', 'mouth', 'seat', 'flare', 'nut-reach', 'centreline', 'eye'] as const;

export const NamedLength = z
  .strictObject({
    convention: z.enum(LENGTH_CONVENTIONS),
    datum: z.strictObject({ a: z.enum(LENGTH_DATUMS), b: z.enum(LENGTH_DATUMS) }),
    from: z.string().describe('in words'),
    to: z.string(),
    lengthMm: finite.optional().describe('along the straight hose; absent = a figure is missing'),
    addedMm: z
      .strictObject({ a: finite, b: finite })
      .optional()
      .describe('by each end to the cut length: C to a seat, less than 0 to a mouth'),
    missing: z.array(z.string()).optional().describe('which figures of the part tables it takes and does not find'),
    notes: z.array(z.string()).optional().describe('where the trade measures this end otherwise as well'),
  })
  .describe('the length of the hose in one convention of the trade');

export const SleeveCut = z
  .strictObject({
    cutLengthMm: finite.describe('an estimate: what to cut the sleeve to, at least'),
    stiffMm: finite.describe('the same for a sleeve whose wall does not stretch'),
    reachMm: finite.describe('past each socket'),
    turnedDeg: finite.describe('all bends of the hose together'),
    allowanceMm: finite.describe('what the bends take of the cut length'),
  })
  .describe('what to cut the sleeve to');

export const Lay = z.strictObject({
  run: z.string(),
  inputHash: z
    .string()
    .optional()
    .describe('of what this run was laid from: the bay, its ports, parts, supports and rules; another one now = stale'),
  outcome: z
    .enum(OUTCOMES)
    .describe(
      'laid: meets radius, clearance and slack; near-miss: the best found, with what it lacks; no-way: nothing to show',
    ),
  reason: z.string().optional().describe('for near-miss and no-way: the tightest constraint, in words'),
  givenUp: z
    .array(z.strictObject({ wish: z.enum(WISHES), reason: z.string(), at: Place }))
    .optional()
    .describe('what the service or the project asks of the shape and this lay does not keep, though it was looked for'),
  centreline: z.strictObject({
    points: z.array(point).describe('dense, at most 5 mm apart, shoulder A to shoulder B'),
    arcLengthMm: z.array(finite),
  }),
  outsideDiameterMm: finite.describe('of hose, or of its sleeve'),
  ends: z.strictObject({ a: EndPose, b: EndPose }),
  supports: z.array(LaySupport),
  cutLengthMm: finite.describe('shoulder to shoulder'),
  liveLengthMm: finite.describe('mouth to mouth'),
  tautLengthMm: finite.describe('live length of the shortest lay that respects bend radius and clearance'),
  overallLengthMm: finite.describe('cut length + C of END A + C of END B'),
  cutOffMm: z.strictObject({ a: finite, b: finite }).describe('C of each end'),
  lengths: z
    .array(NamedLength)
    .optional()
    .describe('in every convention that applies to these two ends; absent in reports of the first builds'),
  sleeve: SleeveCut.optional().describe('absent where there is none, and in reports of the first builds'),
  slack: finite.describe('live / taut - 1'),
  clock: Clock,
  minRadius: z.strictObject({
    radiusMm: finite.describe('least centreline radius'),
    provenAtLeastMm: finite,
    limitMm: finite.describe("the hose's limit, brought to the centreline"),
    at: Place,
  }),
  straightTailMm: z.strictObject({ a: finite, b: finite }).describe('straight hose beyond each mouth'),
  clearances: z.array(Clearance),
  profile: Profile.optional().describe('absent in reports of the first builds'),
  breathing: z.array(Breath).optional().describe('absent where the hose breaks something at rest, or there is none'),
  rock: Rock.optional().describe('absent where no body moves, and where there is no hose to move'),
  tolerance: Tolerance.optional().describe(
    'absent where there is no hose to make, and for convoluted hose without a clock',
  ),
  built: BuiltPose.extend({
    centreline: z.strictObject({ points: z.array(point), arcLengthMm: z.array(finite) }).optional(),
  })
    .optional()
    .describe('the hose as the bench measured it, where the project has that'),
  flow: Flow.optional().describe('absent where no flow is stated, and for air'),
  heat: Heat.optional().describe('absent where nothing is hot, and where there is no hose to heat'),
  hands: Hands.optional().describe('absent where there is no hose to tighten'),
  taper: Taper.optional().describe('absent where no taper thread has a range, and where there is no hose to turn'),
  residual: finite.describe('out-of-balance force of the relaxed rod over EI / L^2'),
  timingsMs: z.record(z.string(), finite),
});

export const Severity = z
  .enum(['stop', 'look', 'note'])
  .describe('stop: forbids cutting; look: decide before cutting; note: know it');

export const Finding = z.strictObject({
  check: z.string(),
  run: z.string(),
  severity: Severity,
  rule: z.string().describe('id in the rule pack'),
  limit: finite,
  measured: finite,
  margin: finite.describe('positive = inside the limit'),
  unit: z.string(),
  at: Place.optional(),
  with: Thing.optional(),
  source: z.string(),
  dissent: z.string().optional(),
  message: z.string(),
  mend: z.string().optional(),
  overrideReason: z.string().optional(),
});

export const REPORT_FORMAT = 'hosewright-lay-report';
export const REPORT_VERSION = 1;

export const LayReport = z.strictObject({
  format: z.literal(REPORT_FORMAT),
  version: z.literal(REPORT_VERSION),
  solverVersion: z.string(),
  seed: z.int(),
  project: z.strictObject({ name: z.string(), exampleData: z.boolean(), inputHash: z.string() }),
  warnings: z.array(z.string()).optional().describe('what to look at in the input; it was laid all the same'),
  lays: z.array(Lay),
  findings: z.array(Finding),
});

export type LengthConvention = (typeof LENGTH_CONVENTIONS)[number];
export type LengthDatum = (typeof LENGTH_DATUMS)[number];
export type NamedLength = z.infer<typeof NamedLength>;
export type SleeveCut = z.infer<typeof SleeveCut>;
export type Wish = (typeof WISHES)[number];
export type Breath = z.infer<typeof Breath>;
export type Clock = z.infer<typeof Clock>;
export type Outcome = (typeof OUTCOMES)[number];
export type LaySupport = z.infer<typeof LaySupport>;
export type Built = NonNullable<z.infer<typeof Lay>['built']>;
export type Flow = z.infer<typeof Flow>;
export type Lay = z.infer<typeof Lay>;
export type Severity = z.infer<typeof Severity>;
export type Finding = z.infer<typeof Finding>;
export type LayReport = z.infer<typeof LayReport>;
