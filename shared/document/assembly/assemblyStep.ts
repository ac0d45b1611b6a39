import type { SleevedHose } from '../lay/sleeveOf.ts';
import type { End } from '../parts/schema.ts';
import type { HoseClamps } from '../project/schema.ts';

/** When a step is due: until the second end goes on; once both are on; with the proof test and after it; once it is in the bay. */
export type AssemblyStage = 'before-second-end' | 'both-ends-on' | 'proof' | 'in-the-bay';

/** One thing the bench does, in its turn. */
export interface AssemblyStep {
  /** stable within one hose; two steps of a kind end in the end or support they are for */
  readonly id: string;
  readonly stage: AssemblyStage;
  readonly words: string;
  readonly why?: string;
  readonly source: string;
  readonly caution?: string;
}

/** How the reader's lengths are written: nearest, and rounded up for what is cut. */
export interface StepLengths {
  readonly both: (mm: number) => string;
  readonly cut: (mm: number) => string;
}

/** A hose with what is stated of the hose clamps at its ends. */
export interface ClampedHose {
  readonly a: { readonly end: End };
  readonly b: { readonly end: End };
  readonly run?: { readonly a: Clamped; readonly b: Clamped } | undefined;
}
interface Clamped {
  readonly hoseClamps?: HoseClamps | undefined;
}

/** The hose with its parts, as a resolved run has them. */
export type AssembledHose = SleevedHose & {
  /** what is stated of its hose clamps */
  readonly run?: ClampedHose['run'];
  readonly clamps?: readonly { readonly support: string; readonly clamp: { readonly name: string } }[] | undefined;
};
