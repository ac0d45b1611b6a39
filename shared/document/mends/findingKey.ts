import type { Finding } from '../lay/schema.ts';

/** One text for a finding, by its check, run, rule and the thing it speaks of: the same for the finding of the same thing in another lay. */
export function findingKey({ check, run, rule, with: thing }: Finding): string {
  return [check, run, rule, thing?.kind ?? '', thing?.id ?? ''].join(' ');
}
