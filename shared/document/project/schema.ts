import { z } from 'zod';
import { LENGTH_UNITS } from '../../base/units.ts';
import { FLUIDS } from '../parts/fluids.ts';
import { END_MATERIALS } from '../parts/schema.ts';

/**
 * The project file, version 1: what the user states, never what the program answers. One definition serves the parser,
 * the types and the published JSON Schema (`hosewright schema`). Lengths are mm, angles in the file are degrees, points
 * and directions are in the bay frame: right-handed, +Z up after the bay is levelled.
 */
const finite = z.number();
const positive = finite.positive();
const nonNegative = finite.nonnegative();
const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]*$/, 'expected lower-case letters, digits and hyphens, starting with a letter or digit');
const name = z.string().min(1);
const point = z.tuple([finite, finite, finite]).describe('mm, bay frame');
const direction = z
  .tuple([finite, finite, finite])
  .refine((v) => Math.hypot(v[0], v[1], v[2]) > 1e-6, 'expected a direction, not the zero vector')
  .describe('any length above zero; only its direction counts');
const relativePath = z
  .string()
  .min(1)
  .regex(
    /^(?!\/)(?!.*(^|\/)\.\.(\/|$))(?!.*\\)(?![a-zA-Z]:).+$/,
    'expected a path below the project file, with forward slashes',
  );

export const BayMesh = z.strictObject({
  path: relativePath.describe('relative to the project file'),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/, 'expected 64 hexadecimal digits')
    .describe('of the file as it was when ports were placed on it'),
  unit: z.enum(LENGTH_UNITS).describe('what one number in the mesh file means'),
  upAxis: z.enum(['+x', '-x', '+y', '-y', '+z', '-z']).describe('which axis of the mesh file points up'),
});

export const SKIN_KINDS = ['plain', 'hot', 'composite', 'sharp-edge', 'moving', 'wiring'] as const;
export const SKIN_MATERIALS = ['steel', 'aluminium', 'composite', 'plastic', 'rubber'] as const;

/** How the parts of a moving skin move from where they were scanned, which is 0. */
export const SkinSweep = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('turn'),
      point: point.describe('on the axis'),
      axis: direction,
      fromDeg: finite.optional().describe('right-handed about the axis; absent, and toDeg too = all round'),
      toDeg: finite.optional(),
    })
    .refine(({ fromDeg, toDeg }) => (fromDeg === undefined) === (toDeg === undefined), {
      message: 'a part of a turn needs fromDeg and toDeg; without both it goes all round',
      path: ['toDeg'],
    })
    .refine(({ fromDeg = 0, toDeg = 360 }) => fromDeg < toDeg, {
      message: 'expected toDeg above fromDeg',
      path: ['toDeg'],
    }),
  z
    .strictObject({ kind: z.literal('stroke'), direction, fromMm: finite, toMm: finite })
    .refine(({ fromMm, toMm }) => fromMm < toMm, { message: 'expected toMm above fromMm', path: ['toMm'] }),
]);

export const Skin = z
  .strictObject({
    id,
    name,
    kind: z.enum(SKIN_KINDS),
    parts: z.array(name).describe('names of bay parts; * stands for any letters'),
    surfaceTemperatureC: finite.optional().describe('of a hot skin, running'),
    emissivity: positive
      .max(1)
      .optional()
      .describe('of a hot skin: what it radiates over what a black one would; absent = as oxidised metal'),
    clearanceMm: nonNegative
      .optional()
      .describe('own clearance from hose surface to this skin; else the rule for its kind'),
    sweep: SkinSweep.optional().describe(
      'of a moving skin: its parts are kept clear of wherever they move; absent = as scanned',
    ),
    material: z
      .enum(SKIN_MATERIALS)
      .optional()
      .describe('of its parts, where bare braid may rub them; absent = not known, or composite by its kind'),
  })
  .refine((s) => s.sweep === undefined || s.kind === 'moving', {
    message: 'only a moving skin sweeps',
    path: ['sweep'],
  })
  .refine((s) => s.kind !== 'hot' || s.surfaceTemperatureC !== undefined, {
    message: 'a hot skin needs its surfaceTemperatureC',
    path: ['surfaceTemperatureC'],
  });

/** deg. A body that turns further than this does not rock on its mounts, and the corners of its ranges are too far apart to tell what lies between. */
export const MOST_ROCK_DEG = 45;

function rangeWithRest(unit: string) {
  return z
    .tuple([finite, finite])
    .refine(([least, most]) => least <= 0 && most >= 0, 'expected [least, most] with rest, 0, between them')
    .default([0, 0])
    .describe(`[least, most], ${unit}; absent = does not`);
}

function turnRange(about: string) {
  return rangeWithRest(`deg, right-handed about ${about} through the pivot`).refine(
    (range) => range.every((deg) => Math.abs(deg) <= MOST_ROCK_DEG),
    `expected turns of at most ${MOST_ROCK_DEG} degrees`,
  );
}

export const Motion = z
  .strictObject({
    pivot: point.describe('what the body turns about'),
    rollDeg: turnRange("the bay's X axis"),
    pitchDeg: turnRange("the bay's Y axis"),
    yawDeg: turnRange("the bay's Z axis, up"),
    shiftMm: z
      .strictObject({
        x: rangeWithRest("mm along the bay's X axis"),
        y: rangeWithRest("mm along the bay's Y axis"),
        z: rangeWithRest("mm along the bay's Z axis, up"),
      })
      .prefault({}),
  })
  .describe(
    'how a body moves on its mounts, rigidly, from where it was scanned: turned about the pivot by roll, then pitch, then yaw, each about the axis of the bay (which do not turn with the body), then shifted',
  );

export const Body = z.strictObject({ id, name, parts: z.array(name), motion: Motion.optional() });

const alongXAndY = (most: number, what: string) =>
  z
    .strictObject({ x: finite.min(-most).max(most).default(0), y: finite.min(-most).max(most).default(0) })
    .prefault({})
    .describe(what);

/** deg and g: what a car, a boat or a machine of this kind stands on, leans to or pulls. */
export const MOST_GRADE_DEG = 40;
export const MOST_ACCELERATION_G = 5;

export const Attitude = z
  .strictObject({
    name: name.describe('as it is read in a sentence: braking, a left-hand bend, a steep drive'),
    gradeDeg: alongXAndY(
      MOST_GRADE_DEG,
      "how steeply the bay's X and Y axes point uphill, deg; below zero downhill; also a lean or a heel",
    ),
    accelerationG: alongXAndY(
      MOST_ACCELERATION_G,
      "of the car, in g, along the bay's X and Y axes; braking is against the way it drives, a bend towards its inside",
    ),
  })
  .describe('how the bay stands or is driven, beside level and at rest');

export const Bay = z.strictObject({
  meshes: z.array(BayMesh).min(1),
  scale: positive.optional().describe('true length over length in the meshes, from a length that is known; absent = 1'),
  level: direction
    .optional()
    .describe(
      'which way is truly up, as the meshes lie by their upAxis; the bay is turned by the least rotation that brings it to +Z; absent = +Z',
    ),
  scanUncertaintyMm: nonNegative.describe('how far the mesh may lie from the real surface; added to every clearance'),
  airTemperatureC: finite.optional().describe("of the bay's air, running; absent = assumed"),
  airSpeedMPerS: nonNegative.optional().describe('of the air across the hoses, running; absent = assumed'),
  soakAirTemperatureC: finite
    .optional()
    .describe("of the bay's air once the engine is off and it stands; absent = assumed"),
  oilLevel: point
    .optional()
    .describe(
      "middle of the oil's surface in the sump, car level; where it leans or is driven the surface turns about this point",
    ),
  attitudes: z.array(Attitude).optional().describe('at which drains are looked at, beside level and at rest'),
  leftOut: z
    .array(name)
    .optional()
    .describe(
      'parts that are not there when the hoses are: old pipes, the scan of a stand; names, * stands for any letters',
    ),
  skins: z.array(Skin).describe('parts in no skin are plain'),
  bodies: z.array(Body).describe('parts in no body belong to the chassis'),
});

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
  adapters: z
    .array(AdapterUse)
    .optional()
    .describe(
      'what is screwed on the port, from the part outwards; the hose end goes on the last. The other outlet of a tee is another port with the same seat and adapters',
    ),
});

export const RunEnd = z.strictObject({
  port: id,
  end: id.describe('id in the table of ends'),
  clockDeg: finite
    .optional()
    .describe(
      "own clock of an angled end about the port axis, from the port's 12 o'clock, clockwise looking along the axis out of the part; absent = free, the program chooses",
    ),
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
  'fuel',
  'coolant',
  'raw-water',
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

/** A hose that exists, as the bench measured it. */
export const AsBuilt = z
  .strictObject({
    cutLengthMm: positive.optional().describe('measured shoulder to shoulder'),
    clockDeg: finite
      .optional()
      .describe('measured between two angled ends, in the convention of the clock; absent = as planned'),
    note: z.string().optional().describe('with what it was measured, by whom, when'),
  })
  .refine((built) => built.cutLengthMm !== undefined || built.clockDeg !== undefined, {
    message: 'a hose as built needs its measured cutLengthMm, clockDeg or both',
    path: ['cutLengthMm'],
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
    asBuilt: AsBuilt.optional(),
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

export const Bundle = z.strictObject({
  id,
  name,
  runs: z.array(id).min(2).describe('hoses that run side by side, tied together'),
  gapMm: nonNegative
    .optional()
    .describe('from hose to hose where they are tied, such as a separator; absent = they touch'),
});

export const RuleOverride = z.strictObject({
  rule: id.describe('id in the rule pack'),
  run: id.optional().describe('absent = every run'),
  value: finite,
  reason: z.string().min(3).describe('why; printed on every paper'),
});

export const CLOCK_DIALECTS = ['near-at-six', 'far-to-near', 'far-at-twelve'] as const;
export const CLOCK_TOLERANCES = ['mil-dtl-83796', 'army-tm'] as const;

export const CODED_LENGTHS = ['eighths', 'hundredths'] as const;
export const PAPER_SIZES = ['A4', 'Letter'] as const;

export const Paperwork = z
  .strictObject({
    clockDialect: z
      .enum(CLOCK_DIALECTS)
      .optional()
      .describe(
        "how the hose shop states a clock: near end at 6 o'clock, counter-clockwise to the far one (absent = this); far to near, clockwise; or far end at 12 o'clock, near end told as a clock position. All give the same number",
      ),
    clockTolerance: z
      .enum(CLOCK_TOLERANCES)
      .optional()
      .describe('which published tolerance of the clock holds: 3 and 5 degrees (absent = this), or 5 and 10'),
    finestInch: z
      .union([z.literal(16), z.literal(32)])
      .optional()
      .describe('fractions of an inch on paper down to 1/16 (absent = this) or 1/32'),
    codedLength: z
      .enum(CODED_LENGTHS)
      .optional()
      .describe(
        'the cut list also gives the overall length in code, with its words: whole inches and eighths (0244 = 24-4/8 in), or hundredths of an inch (01250 = 12.50 in)',
      ),
    paper: z.enum(PAPER_SIZES).optional().describe('absent = A4'),
  })
  .describe('how the papers speak');

export const VEHICLES = ['car', 'motorcycle', 'boat', 'aircraft', 'other'] as const;

export const PROJECT_FORMAT = 'hosewright-project';
export const PROJECT_VERSION = 1;

export const Project = z.strictObject({
  format: z.literal(PROJECT_FORMAT),
  version: z.literal(PROJECT_VERSION),
  name,
  exampleData: z.boolean().default(false).describe('true = invented, for learning; said on every paper'),
  note: z.string().optional(),
  vehicle: z
    .enum(VEHICLES)
    .optional()
    .describe('whose bay it is; on a boat metals are wet with salt and petrol hose is marked; absent = not said'),
  bay: Bay,
  tables: z
    .strictObject({
      hoses: z.array(relativePath).min(1),
      ends: z.array(relativePath).min(1),
      sleeves: z.array(relativePath).default([]),
      adapters: z.array(relativePath).optional(),
      clamps: z.array(relativePath).optional(),
      rolls: z.array(relativePath).optional().describe('hose in stock'),
    })
    .describe("the user's parts: CSV files, relative to the project file"),
  ports: z.array(Port),
  runs: z.array(Run),
  bundles: z
    .array(Bundle)
    .optional()
    .describe('between the hoses of a bundle its gap is asked, not the spacing of hoses'),
  overrides: z.array(RuleOverride).default([]),
  paperwork: Paperwork.optional(),
  seed: z.int().nonnegative().default(1),
});

export type BayMesh = z.infer<typeof BayMesh>;
export type Skin = z.infer<typeof Skin>;
export type SkinKind = Skin['kind'];
export type SkinSweep = z.infer<typeof SkinSweep>;
export type SkinMaterial = NonNullable<Skin['material']>;
export type Motion = z.infer<typeof Motion>;
export type Body = z.infer<typeof Body>;
export type Bay = z.infer<typeof Bay>;
export type Port = z.infer<typeof Port>;
export type RunEnd = z.infer<typeof RunEnd>;
export type Support = z.infer<typeof Support>;
export type Lock = z.infer<typeof Lock>;
export type Service = z.infer<typeof Service>;
export type Purpose = Service['purpose'];
export type Fluid = Service['fluid'];
export type Vehicle = (typeof VEHICLES)[number];
export type Attitude = z.infer<typeof Attitude>;
export type AdapterUse = z.infer<typeof AdapterUse>;
export type AsBuilt = z.infer<typeof AsBuilt>;
export type Paperwork = z.infer<typeof Paperwork>;
export type CodedLength = (typeof CODED_LENGTHS)[number];
export type ClockDialect = (typeof CLOCK_DIALECTS)[number];
export type Run = z.infer<typeof Run>;
export type Bundle = z.infer<typeof Bundle>;
export type RuleOverride = z.infer<typeof RuleOverride>;
export type Project = z.infer<typeof Project>;

/** The skin of every part that the project puts in none. */
export const PLAIN_SKIN: Skin = { id: 'plain', name: 'Plain', kind: 'plain', parts: [] };
/** The body of every part and port that the project puts in none. */
export const CHASSIS_BODY: Body = { id: 'chassis', name: 'Chassis', parts: [] };
