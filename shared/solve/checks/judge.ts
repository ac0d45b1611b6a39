import { LIMIT_RELATIVE } from '../../base/tolerances.ts';
import type { Finding, Place, Severity, Thing } from '../../document/lay/schema.ts';
import type { RuleUse } from '../../document/rules/index.ts';
import type { CheckName } from '../../document/wording/findingWords.ts';

/** One comparison of a measured value with a limit, and what to say if it fails. */
export interface Comparison {
  readonly check: CheckName;
  readonly run: string;
  readonly use: RuleUse;
  /** at-least: the measured value may not lie under the limit; at-most: not over it. */
  readonly sense: 'at-least' | 'at-most';
  /** The limit that holds, overrides and all; absent = the rule's value as used. */
  readonly limit?: number;
  /** The limit as the rule alone would set it; absent = the rule's own value where `limit` is absent, else `limit`. */
  readonly ruleLimit?: number;
  readonly measured: number;
  readonly unit: string;
  /** How grave it is to break the limit. */
  readonly severity: Severity;
  /** What is wrong, with its numbers; it stands also in the note where only an override lets it pass. */
  readonly message: string;
  readonly at?: Place;
  readonly with?: Thing;
  readonly mend?: string;
  /** Absent = the rule's own. */
  readonly source?: string;
  /** Why the limit is not the rule's, where that is no override of the rule pack; it comes before one. */
  readonly ownReason?: string;
}

/** Whether a measured value meets a limit; meeting it exactly, to rounding, counts. */
export function meets(sense: Comparison['sense'], measured: number, limit: number): boolean {
  const rounding = LIMIT_RELATIVE * Math.abs(limit);
  return sense === 'at-least' ? measured >= limit - rounding : measured <= limit + rounding;
}

/**
 * The finding of a comparison, or none. Where the user has set the limit, a broken limit says so; one that holds only
 * because of that becomes a note that carries the reason, so an override lowers nothing silently.
 */
export function judge(c: Comparison): Finding[] {
  const limit = c.limit ?? c.use.value;
  const ruleLimit = c.ruleLimit ?? c.limit ?? c.use.rule.value;
  const reason = c.ownReason ?? c.use.override?.reason;
  if (!meets(c.sense, c.measured, limit)) {
    const tail = reason === undefined ? '' : ` The limit was set for this project: ${reason}.`;
    return [finding(c, limit, c.severity, `${c.message}${tail}`, reason)];
  }
  if (reason === undefined || meets(c.sense, c.measured, ruleLimit)) return [];
  return [finding(c, limit, 'note', `${c.message} Passed by the project's own limit: ${reason}.`, reason)];
}

function finding(
  c: Comparison,
  limit: number,
  severity: Severity,
  message: string,
  overrideReason: string | undefined,
): Finding {
  const { rule } = c.use;
  const margin = c.sense === 'at-least' ? c.measured - limit : limit - c.measured;
  return {
    check: c.check,
    run: c.run,
    severity,
    rule: rule.id,
    limit,
    measured: c.measured,
    margin,
    unit: c.unit,
    ...(c.at === undefined ? {} : { at: c.at }),
    ...(c.with === undefined ? {} : { with: c.with }),
    source: c.source ?? rule.source,
    ...(rule.dissent === undefined ? {} : { dissent: rule.dissent }),
    message,
    ...(c.mend === undefined ? {} : { mend: c.mend }),
    ...(overrideReason === undefined ? {} : { overrideReason }),
  };
}
