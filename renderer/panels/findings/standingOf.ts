import type { Finding } from '../../../shared/document/lay/schema.ts';
import { findingKey } from '../../../shared/document/mends/findingKey.ts';

/** How a finding that is there after a change stands to what was there before it, in words. */
export type Standing = 'new' | 'worse than before' | 'as before';

/** `brings` is what the change makes worse or brings anew; `before` the findings of the report that it was tried on. */
export function standingOf(finding: Finding, brings: readonly Finding[], before: readonly Finding[]): Standing {
  const isBrought = brings.some(({ check, message }) => check === finding.check && message === finding.message);
  if (!isBrought) return 'as before';
  const key = findingKey(finding);
  return before.some((one) => findingKey(one) === key) ? 'worse than before' : 'new';
}
