import type { SleevedHose } from '../lay/sleeveOf.ts';

/** When a step is due: until the second end goes on; once both are on; with the proof test and after it. */
export type AssemblyStage = 'before-second-end' | 'both-ends-on' | 'proof';

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

/** The hose with its parts, as a resolved run has them. */
export type AssembledHose = SleevedHose & {
  readonly clamps?: readonly { readonly support: string; readonly clamp: { readonly name: string } }[] | undefined;
};
