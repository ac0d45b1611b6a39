import { z } from 'zod';

/**
 * The lay report: what the program answers, published as JSON Schema by `hosewright schema lay-report`. Plain data:
 * mm, degrees, kPa; points and directions in the bay frame. Arc length 0 is shoulder A (the saw's cut at END A) and
 * grows along the centreline to shoulder B, so a place on the hose has the same number in the bay, on the straight
 * view and on the bench.
 */
const finite = z.number();
const point = z.tuple([finite, finite, finite]);

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
  })
  .describe('the same hose, ends where they stand, at the length that pressure gives it');

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
  tensionN: finite
    .optional()
    .describe(
      'greatest pull along the hose where it is held; below zero = it pushes. As good as its bending stiffness',
    ),
  twistDeg: finite
    .optional()
    .describe('of the stretch that is wrung most, right-handed about the hose from END A to END B'),
  torqueNmm: finite.optional().describe('with which that stretch is wrung; as good as its torsional stiffness'),
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
      'laid: meets radius and clearance; near-miss: the best found, with what it breaks; no-way: nothing to show',
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
  breathing: z.array(Breath).optional().describe('absent where the run was not laid'),
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

export type AdapterPose = z.infer<typeof AdapterPose>;
export type EndPose = z.infer<typeof EndPose>;
export type Place = z.infer<typeof Place>;
export type Thing = z.infer<typeof Thing>;
export type LengthConvention = (typeof LENGTH_CONVENTIONS)[number];
export type LengthDatum = (typeof LENGTH_DATUMS)[number];
export type NamedLength = z.infer<typeof NamedLength>;
export type SleeveCut = z.infer<typeof SleeveCut>;
export type Wish = (typeof WISHES)[number];
export type Breath = z.infer<typeof Breath>;
export type RockPose = z.infer<typeof RockPose>;
export type RockExtreme = z.infer<typeof RockExtreme>;
export type Rock = z.infer<typeof Rock>;
export type TaperPose = z.infer<typeof TaperPose>;
export type Taper = z.infer<typeof Taper>;
export type Clearance = z.infer<typeof Clearance>;
export type Clock = z.infer<typeof Clock>;
export type Outcome = (typeof OUTCOMES)[number];
export type LaySupport = z.infer<typeof LaySupport>;
export type BuiltPose = z.infer<typeof BuiltPose>;
export type Tolerance = z.infer<typeof Tolerance>;
export type Built = NonNullable<z.infer<typeof Lay>['built']>;
export type Flow = z.infer<typeof Flow>;
export type Lay = z.infer<typeof Lay>;
export type Severity = z.infer<typeof Severity>;
export type Finding = z.infer<typeof Finding>;
export type LayReport = z.infer<typeof LayReport>;
