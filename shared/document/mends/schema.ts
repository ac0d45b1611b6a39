import { z } from 'zod';
import { Clearance, Finding, Lay } from '../lay/schema.ts';
import { AdapterUse, HoseClamps, Support } from '../project/schema.ts';

/**
 * What would mend a run's findings, tried by laying it so: published as JSON Schema by `hosewright schema mends`. A mend is
 * a small change of the project as plain data, so that window and command line apply the very change that was tried.
 */
const side = z.enum(['a', 'b']);
const sizedEnd = z.strictObject({
  end: z.string(),
  adapters: z.array(AdapterUse).optional().describe('all that is then screwed on its port; absent = as it is'),
});

/** One change of a run. */
export const OneEdit = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('end'), side, end: z.string() }).describe('another end; its own clock is free'),
  z
    .strictObject({ kind: z.literal('ends'), a: z.string(), b: z.string() })
    .describe('both ends; the own clock of one that changes is free'),
  z.strictObject({ kind: z.literal('free-clock'), side }).describe('the program chooses the own clock of this end'),
  z.strictObject({ kind: z.literal('hose'), hose: z.string() }),
  z.strictObject({ kind: z.literal('sleeve'), sleeve: z.string() }),
  z.strictObject({ kind: z.literal('slack'), slack: z.number().min(0).max(0.5) }),
  z.strictObject({ kind: z.literal('bleed') }).describe('a bleed where the hose is highest'),
  z.strictObject({ kind: z.literal('new-hose') }).describe('a hose cut anew: what was cut and measured is let go'),
  z
    .strictObject({
      kind: z.literal('hold'),
      put: z.array(z.strictObject({ before: z.int().nonnegative(), support: Support })).min(1),
    })
    .describe('supports that are put in, each before the one that has this number in the run now'),
  z
    .strictObject({ kind: z.literal('change-support'), support: Support })
    .describe('a support of this id as it is then: slid, another clamp, sealed'),
  z
    .strictObject({
      kind: z.literal('size'),
      hose: z.string(),
      a: sizedEnd,
      b: sizedEnd,
      sleeve: z.string().optional(),
      clamps: z
        .array(z.strictObject({ support: z.string(), part: z.string().optional() }))
        .describe('clamps that then hold it; no part = one that no table names'),
    })
    .describe(
      'a hose of another size with its ends, and adapters on the ports where it needs them; own clocks are free',
    ),
  z
    .strictObject({ kind: z.literal('hose-clamps'), a: HoseClamps.optional(), b: HoseClamps.optional() })
    .describe('how the hose clamps of an end then sit; absent = as they do'),
  z.strictObject({ kind: z.literal('let-go'), support: z.string() }).describe('a support that is taken off'),
  z
    .strictObject({ kind: z.literal('own-way'), apartFrom: z.string() })
    .describe('out of every bundle in which it is tied to this run'),
]);

export const MendEdit = z.discriminatedUnion('kind', [
  ...OneEdit.options,
  z
    .strictObject({ kind: z.literal('both'), first: OneEdit, second: OneEdit })
    .describe('two changes, the second made in the run as the first leaves it'),
]);

export const Mend = z.strictObject({
  id: z.string().describe('the same for the same change'),
  run: z.string(),
  edit: MendEdit,
  words: z.string().describe('what is changed, in the words of the trade'),
});

export const CuredFinding = z.strictObject({
  finding: Finding.describe('as it was'),
  left: Finding.optional().describe('what is left of it, less grave; absent = it is gone'),
  marginMm: z.number().optional().describe('by how much the new lay keeps the limit, where that is a length'),
  words: z.string().describe('the same as part of a sentence'),
});

export const MendAnswer = z.strictObject({
  mend: Mend,
  words: z.string().describe('the mend with what it does, in one sentence'),
  how: z
    .enum(['near', 'anew'])
    .describe('near: the hose as it lay, let go again near there; anew: the best way looked for from nothing'),
  lay: Lay,
  towards: z
    .array(z.strictObject({ run: z.string(), clearances: z.array(Clearance) }))
    .describe('the clearances of the other runs, which now have this one where it lies'),
  findings: z.array(Finding).describe('of every run, as they then are'),
  cured: z.array(CuredFinding),
  left: z.array(Finding).describe('what still forbids cutting or is to be looked at on this run'),
  stopsLeft: z.int(),
  looksLeft: z.int(),
  brings: z
    .array(Finding)
    .optional()
    .describe('what is to be looked at that was not, or not so: only where less forbids cutting for it'),
  newNotes: z.array(Finding).describe('notes that were not there before'),
  change: z.int().describe('how much it changes for the builder: 1 = an end turned, 6 = both ends others'),
  longerMm: z.number().describe('cut length now, less cut length before'),
  toGet: z.array(z.string()).describe('parts that the run does not have now, in words'),
});

/** A change that was laid and measured and is no answer: how near it comes. */
export const NearMend = z.strictObject({
  mend: Mend,
  words: z.string().describe('the change with what it does and what it lacks, in one sentence'),
  cures: z.array(z.string()).describe('what it cures or makes less grave of what is to be mended, in words'),
  brings: z.array(Finding).describe('what is new, graver or further beyond its limit, on any run: why it is no answer'),
  left: z.array(Finding).describe('what then forbids cutting or is to be looked at on this run'),
  toGet: z.array(z.string()).describe('parts that the run does not have now, in words'),
});

export const Mends = z.strictObject({
  format: z.literal('hosewright-mends'),
  version: z.literal(1),
  run: z.string(),
  inputHash: z.string().describe('of the project that they were tried on'),
  aimedAt: z.array(Finding).describe('what is to be mended'),
  tried: z.int().describe('changes that the hose was laid with'),
  nearest: z
    .array(NearMend)
    .optional()
    .describe('where something that is to be mended has no answer: what comes nearest to one, best first'),
  answers: z
    .array(MendAnswer)
    .describe('best first; none that brings what forbids cutting, and none that brings less without curing that'),
});

export type OneEdit = z.infer<typeof OneEdit>;
export type MendEdit = z.infer<typeof MendEdit>;
export type Mend = z.infer<typeof Mend>;
export type CuredFinding = z.infer<typeof CuredFinding>;
export type MendAnswer = z.infer<typeof MendAnswer>;
export type NearMend = z.infer<typeof NearMend>;
export type Mends = z.infer<typeof Mends>;
