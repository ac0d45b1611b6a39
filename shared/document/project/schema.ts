import { z } from 'zod';
import { Bay } from './baySchema.ts';
import { finite, id, name, nonNegative, relativePath } from './fields.ts';
import { Port } from './portSchema.ts';
import { Run } from './runSchema.ts';

export * from './baySchema.ts';
export * from './benchSchema.ts';
export * from './portSchema.ts';
export * from './runSchema.ts';

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

/**
 * The project file, version 1: what the user states, never what the program answers. One definition serves the parser,
 * the types and the published JSON Schema (`hosewright schema`). Lengths are mm, angles in the file are degrees, points
 * and directions are in the bay frame: right-handed, +Z up after the bay is levelled.
 */
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

export type Vehicle = (typeof VEHICLES)[number];
export type Paperwork = z.infer<typeof Paperwork>;
export type CodedLength = (typeof CODED_LENGTHS)[number];
export type ClockDialect = (typeof CLOCK_DIALECTS)[number];
export type Bundle = z.infer<typeof Bundle>;
export type RuleOverride = z.infer<typeof RuleOverride>;
export type Project = z.infer<typeof Project>;
