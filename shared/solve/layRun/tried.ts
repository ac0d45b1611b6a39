import type { Attempt } from './attempts.ts';
import type { Candidate } from './candidate.ts';

/** A hose with the attempt that found it. */
export interface Tried {
  readonly candidate: Candidate;
  readonly attempt: Attempt;
}
