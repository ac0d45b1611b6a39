import { z } from 'zod';
import { FLUIDS } from './fluids.ts';

/**
 * The user's parts, one CSV row each. The keys below are the program's; the column headings of the CSV are the same
 * words in snake case (`outsideDiameterMm` = `outside_diameter_mm`). Every row says where its figures come from.
 */
const finite = z.number();
const positive = finite.positive();
const nonNegative = finite.nonnegative();
const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, 'expected lower-case letters, digits and hyphens');
const name = z.string().min(1);

/** Whose figures: read in a published source, the user's own measurement or maker's sheet, or invented for the demo. */
export const PROVENANCES = ['published', 'own', 'example'] as const;
const sourced = {
  provenance: z.enum(PROVENANCES),
  source: z.string().min(1).describe('document, table, page; or what was measured and with what'),
};

export const CORES = ['ptfe-smooth', 'ptfe-convoluted', 'nbr', 'cpe', 'epdm', 'silicone', 'synthetic-rubber'] as const;
export const COVERS = ['steel-braid', 'polyester-braid', 'aramid-braid', 'textile-braid', 'rubber'] as const;

export const Hose = z.strictObject({
  id,
  name,
  construction: name.describe("in the trade's words"),
  core: z.enum(CORES),
  conductiveCore: z.boolean().optional(),
  cover: z.enum(COVERS).describe('what the outside is'),
  dash: z.int().positive(),
  insideDiameterMm: positive,
  outsideDiameterMm: positive,
  minBendRadiusMm: positive,
  minBendRadiusDatum: z
    .enum(['inside', 'centreline'])
    .describe('where the maker measures it: inside of the bend (rubber, PTFE) or centreline (metal)'),
  maxPressureKpa: positive.describe('at the temperature the maker states'),
  minTemperatureC: finite,
  maxTemperatureC: finite,
  weightKgPerM: positive.optional().describe('filled weight is added by the program; absent = estimated'),
  bendingStiffnessNmm2: positive.optional().describe('EI; absent = estimated'),
  bendingStiffnessMethod: name.optional().describe('how that stiffness was found, such as: sag of 300 mm held level'),
  convolutionPitchMm: positive.optional().describe('of a convoluted core, from ridge to ridge'),
  pressureByTemperature: z
    .array(z.tuple([finite, positive]))
    .optional()
    .describe('working pressure by temperature, pairs of C:kPa with rising temperature, such as 20:17000 150:13600'),
  vacuumLimitKpa: finite
    .max(0)
    .optional()
    .describe("lowest pressure inside at which it stays round, against the air's: below zero"),
  listedFluids: z.array(z.enum(FLUIDS)).optional().describe('what its maker lists it for, such as: engine-oil petrol'),
  marking: name.optional().describe('what is printed along it, such as: A1-15, of marine fuel hose'),
  proofPressureKpa: positive.optional().describe("its maker's test pressure; absent = the usual multiple"),
  burstPressureKpa: positive.optional().describe("its maker's least burst pressure"),
  pricePerM: nonNegative.optional().describe('what a metre costs, in your own money; absent = no cost is told'),
  ...sourced,
});

export const END_MATERIALS = ['aluminium', 'steel', 'stainless', 'brass'] as const;
export type EndMaterial = (typeof END_MATERIALS)[number];
export const JOINTS = ['crimp', 'screw-together', 'push-on', 'clamped'] as const;

export const END_FORMS = ['nut', 'male', 'banjo', 'flange', 'barb'] as const;

/** An end as a table has it: by its three lengths, or by C and drop, from which `completeEnd` makes the three. */
export const EndRow = z.strictObject({
  id,
  name,
  seat: name.describe('thread or seat, such as flare-37'),
  dash: z.int().positive(),
  bendAngleDeg: finite.min(0).max(180).describe('0 = straight; 90 = the hose leaves square to the port axis'),
  form: z.enum(END_FORMS).optional().describe('how it joins its port; absent = nut'),
  seatToBendMm: nonNegative
    .optional()
    .describe(
      'along the port axis, seat to where the two axes meet; for a straight end any split of its one length; at 180 degrees to where the tube begins to bend. Absent = from cut_off_mm and drop_mm',
    ),
  bendToShoulderMm: finite
    .optional()
    .describe(
      'along the hose axis, from there to the shoulder the hose butts on; at 180 degrees from where the tube ends bending',
    ),
  cutOffMm: finite
    .optional()
    .describe('C: seat to shoulder along the axis of the straight hose; instead of, or beside, the lengths'),
  dropMm: nonNegative
    .optional()
    .describe("how far the seat's centre lies from the hose axis; at 180 degrees from axis to axis"),
  tubeBendRadiusMm: positive.optional().describe("of the end's own bent tube, to its centreline"),
  shoulderToMouthMm: nonNegative.describe('from the shoulder to where the hose leaves the socket or collar'),
  collarDiameterMm: positive.describe('largest outside diameter of socket or collar'),
  collarLengthMm: positive.optional().describe('of socket or collar along the hose'),
  insertionDepthMm: positive
    .optional()
    .describe('from the cut to the mark for a full socket; absent = shoulder_to_mouth_mm'),
  hexMm: positive.optional().describe('nut, across flats'),
  nutReachMm: finite
    .optional()
    .describe('how far the nut reaches past the seat, away from the hose; below zero = short of it'),
  torqueNm: positive
    .optional()
    .describe('of its nut, by its own maker, for the metals at hand; comes before every published table'),
  boreMm: positive.optional().describe('narrowest bore'),
  weightG: positive.optional(),
  maxPressureKpa: positive.optional(),
  maxTemperatureC: finite.optional(),
  joint: z.enum(JOINTS).describe('how the hose is held on it; clamped = by hose clamps over its barb'),
  innerOlive: z.boolean().optional().describe('of a screw-together end: an olive goes between core and braid'),
  expander: z
    .boolean()
    .optional()
    .describe(
      'the hose is widened before assembly; absent = usual above -8 with an olive (common practice, no source)',
    ),
  crimpDie: name.optional(),
  crimpSetting: name.optional().describe("of the machine, as the maker's card gives it"),
  crimpFromMm: positive.optional().describe('finished diameter, least, on the flats'),
  crimpToMm: positive.optional().describe('finished diameter, greatest'),
  material: z.enum(END_MATERIALS),
  turning: z
    .enum(['swivel', 'range', 'fixed'])
    .describe('swivel: turns about its port until the nut is tight; range: only from turn_from_deg to turn_to_deg'),
  turnFromDeg: finite.optional().describe("own clock about the port axis, from the port's 12 o'clock"),
  turnToDeg: finite.optional(),
  price: nonNegative.optional().describe('what one costs, in your own money; absent = no cost is told'),
  ...sourced,
});

export const Sleeve = z.strictObject({
  id,
  name,
  insideDiameterMm: positive,
  outsideDiameterMm: positive,
  maxTemperatureC: finite.describe("continuous, of the sleeve; it never raises the hose's own limit"),
  weightKgPerM: nonNegative,
  ...sourced,
});

export const ADAPTER_FORMS = ['straight', 'elbow', 'banjo', 'bulkhead', 'tee'] as const;

/**
 * What is screwed on a port before the hose end. Its outlet lies `portToBendMm` out along the port's axis to the bend,
 * then `bendToSeatMm` on, turned by `bendAngleDeg`; a tee's branch leaves at the bend, turned by `branchAngleDeg`.
 */
export const Adapter = z.strictObject({
  id,
  name,
  form: z.enum(ADAPTER_FORMS),
  portSeat: name.describe('thread or seat that goes in the port, such as npt-1-4 or orb-8'),
  portDash: z.int().positive(),
  seat: name.describe('thread or seat that it offers, such as flare-37'),
  dash: z.int().positive(),
  bendAngleDeg: finite.min(0).max(180).describe('0 = straight on'),
  portToBendMm: nonNegative.describe('from the seat of the port to where the two axes meet, when tight'),
  bendToSeatMm: nonNegative.describe('from there to the seat it offers; for a straight one any split'),
  branchSeat: name.optional().describe('of a tee'),
  branchDash: z.int().positive().optional(),
  branchAngleDeg: finite.min(0).max(180).optional().describe('of a tee, from the port axis; absent = 90'),
  branchToSeatMm: nonNegative.optional().describe('of a tee, from where the axes meet to the seat of the branch'),
  turning: z
    .enum(['settable', 'fixed', 'taper'])
    .describe(
      'settable: turned at will, then locked; fixed: one way only; taper: tight somewhere in a range of clocks',
    ),
  diameterMm: positive.describe('largest outside diameter of its body'),
  hexMm: positive.optional(),
  material: z.enum(END_MATERIALS),
  maxPressureKpa: positive.optional(),
  weightG: positive.optional(),
  ...sourced,
});

export const Clamp = z.strictObject({
  id,
  name,
  holdsFromMm: positive.describe('least outside diameter of what it holds'),
  holdsToMm: positive.describe('greatest'),
  standOffMm: nonNegative.describe('from what it is fixed to, to the axis of what it holds'),
  widthMm: positive.describe('along the hose'),
  boltMm: positive.optional().describe('diameter of its bolt'),
  material: name.describe('such as: steel, with silicone cushion'),
  maxTemperatureC: finite,
  weightG: positive.optional(),
  ...sourced,
});

export const Roll = z.strictObject({
  id,
  hose: id.describe('id in the table of hoses'),
  lengthMm: positive.describe('what is left on it'),
  batch: z.string().optional(),
  cureDate: z
    .string()
    .regex(/^[1-4]Q\d{2}(\d{2})?$|^\d{4}-\d{2}(-\d{2})?$/, 'expected a quarter such as 2Q26 or a date such as 2026-05')
    .optional(),
  offcut: z.boolean().optional().describe('true = a piece left over, to be used before whole rolls'),
  place: z.string().optional().describe('where it is kept'),
  note: z.string().optional(),
  ...sourced,
});

/** An end whose three lengths are known. */
export interface End extends Omit<z.infer<typeof EndRow>, 'seatToBendMm' | 'bendToShoulderMm'> {
  readonly seatToBendMm: number;
  readonly bendToShoulderMm: number;
}
export type EndRow = z.infer<typeof EndRow>;
export type Hose = z.infer<typeof Hose>;
export type Sleeve = z.infer<typeof Sleeve>;
export type Adapter = z.infer<typeof Adapter>;
export type Clamp = z.infer<typeof Clamp>;
export type Roll = z.infer<typeof Roll>;

/** All parts a project may name, by kind and id. */
export interface PartTables {
  readonly hoses: readonly Hose[];
  readonly ends: readonly End[];
  readonly sleeves: readonly Sleeve[];
  readonly adapters: readonly Adapter[];
  readonly clamps: readonly Clamp[];
  readonly rolls: readonly Roll[];
}
