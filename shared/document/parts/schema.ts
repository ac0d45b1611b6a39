import { z } from 'zod';

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
  ...sourced,
});

export const END_MATERIALS = ['aluminium', 'steel', 'stainless', 'brass'] as const;
export const JOINTS = ['crimp', 'screw-together', 'push-on'] as const;

export const End = z.strictObject({
  id,
  name,
  seat: name.describe('thread or seat, such as flare-37'),
  dash: z.int().positive(),
  bendAngleDeg: finite.min(0).max(180).describe('0 = straight; 90 = the hose leaves square to the port axis'),
  seatToBendMm: nonNegative.describe(
    'along the port axis, seat to where the two axes meet; for a straight end any split of its one length',
  ),
  bendToShoulderMm: nonNegative.describe('along the hose axis, from there to the shoulder the hose butts on'),
  shoulderToMouthMm: nonNegative.describe('from the shoulder to where the hose leaves the socket or collar'),
  collarDiameterMm: positive.describe('largest outside diameter of socket or collar'),
  joint: z.enum(JOINTS),
  material: z.enum(END_MATERIALS),
  turning: z.enum(['swivel', 'fixed']).describe('swivel: turns about its port until the nut is tight'),
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

export type Hose = z.infer<typeof Hose>;
export type End = z.infer<typeof End>;
export type Sleeve = z.infer<typeof Sleeve>;

/** All parts a project may name, by kind and id. */
export interface PartTables {
  readonly hoses: readonly Hose[];
  readonly ends: readonly End[];
  readonly sleeves: readonly Sleeve[];
}
