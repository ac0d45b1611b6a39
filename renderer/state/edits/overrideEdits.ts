import type { Finding } from '../../../shared/document/lay/schema.ts';
import type { Project, RuleOverride } from '../../../shared/document/project/schema.ts';
import { ruleById, ruleValue } from '../../../shared/document/rules/index.ts';
import type { Rule } from '../../../shared/document/rules/rule.ts';

/** A rule that a finding was judged by, as far as its user may set it. */
export interface Passing {
  readonly rule: Rule;
  /** what holds now */
  readonly now: number;
  /** the value at which the finding would just pass, in the rule's unit */
  readonly wouldPass: number;
}

/** How a finding could be passed; why not, in a sentence, where its rule is nobody's to set. */
export function passingOf(project: Project, finding: Finding): Passing | string {
  const rule = ruleById(finding.rule);
  if (rule === undefined) return 'The rule of this finding is not in the rule pack any more: check anew.';
  if (!rule.overridable) return `“${rule.title}” is nobody’s to set: change what breaks it.`;
  const now = ruleValue(project, rule.id, finding.run).value;
  return { rule, now, wouldPass: passes(rule, now, finding) };
}

/** A limit of the rule's own unit moves by what is missing; one that is a multiple of something else, in proportion. */
function passes(rule: Rule, now: number, { limit, measured, unit }: Finding): number {
  if (rule.unit === unit || limit === 0) return now + (measured - limit);
  return now * (measured / limit);
}

/** Letters that a reason has at least; the project's own schema asks the same. */
export const LEAST_REASON = 3;

/** Sets a rule for one run, with the reason that every paper prints; it takes the place of what was set for it before. */
export function setOverride(project: Project, override: RuleOverride): Project {
  return { ...project, overrides: [...withoutOverride(project, override).overrides, override] };
}

export function withoutOverride(project: Project, { rule, run }: Pick<RuleOverride, 'rule' | 'run'>): Project {
  return { ...project, overrides: project.overrides.filter((one) => one.rule !== rule || one.run !== run) };
}
