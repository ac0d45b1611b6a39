import { invariant } from '../../base/invariant.ts';
import type { Project, RuleOverride } from '../project/schema.ts';
import { ASSEMBLY_RULES } from './assemblyRules.ts';
import { BENCH_RULES } from './benchRules.ts';
import { BEND_RULES } from './bendRules.ts';
import { BUILT_RULES } from './builtRules.ts';
import { BUNDLE_RULES } from './bundleRules.ts';
import { CLEARANCE_RULES } from './clearanceRules.ts';
import { CLOCK_RULES } from './clockRules.ts';
import { DRAIN_RULES } from './drainRules.ts';
import { FLOW_RULES } from './flowRules.ts';
import { HAND_RULES } from './handRules.ts';
import { HEAT_RULES } from './heatRules.ts';
import { HOSE_CLAMP_RULES } from './hoseClampRules.ts';
import { LAY_RULES } from './layRules.ts';
import { MARINE_RULES } from './marineRules.ts';
import { MATERIAL_RULES } from './materialRules.ts';
import { RATING_RULES } from './ratingRules.ts';
import { ROCK_RULES } from './rockRules.ts';
import type { Rule } from './rule.ts';
import { SLACK_RULES } from './slackRules.ts';
import { STATIC_RULES } from './staticRules.ts';
import { SUCTION_RULES } from './suctionRules.ts';
import { SUPPORT_RULES } from './supportRules.ts';
import { TAPER_RULES } from './taperRules.ts';
import { TURBO_RULES } from './turboRules.ts';

/** The date of this set of rules; papers print it. A changed value or source is a new date. */
export const RULE_PACK_DATE = '2026-11-26';

/** Every rule of the pack, by subject. */
export const RULES: readonly Rule[] = [
  ...LAY_RULES,
  ...BEND_RULES,
  ...SLACK_RULES,
  ...ROCK_RULES,
  ...TAPER_RULES,
  ...BUILT_RULES,
  ...BENCH_RULES,
  ...CLEARANCE_RULES,
  ...HEAT_RULES,
  ...HAND_RULES,
  ...BUNDLE_RULES,
  ...DRAIN_RULES,
  ...TURBO_RULES,
  ...SUCTION_RULES,
  ...FLOW_RULES,
  ...SUPPORT_RULES,
  ...HOSE_CLAMP_RULES,
  ...MARINE_RULES,
  ...ASSEMBLY_RULES,
  ...CLOCK_RULES,
  ...RATING_RULES,
  ...MATERIAL_RULES,
  ...STATIC_RULES,
];

const BY_ID: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.id, rule]));

/** The rule with this id, if the pack has it. */
export function ruleById(id: string): Rule | undefined {
  return BY_ID.get(id);
}

/** The value that holds, the rule it comes from, and the override that set it where one did. */
export interface RuleUse {
  readonly value: number;
  readonly rule: Rule;
  readonly override?: RuleOverride;
}

/**
 * The value of a rule for a run of a project: the run's own override, else one for every run, else the rule's. Asking
 * for a rule that is not in the pack is our own mistake; an override of a rule that takes none is passed over (the
 * project's parser refuses it).
 */
export function ruleValue(project: Pick<Project, 'overrides'>, ruleId: string, runId?: string): RuleUse {
  const rule = BY_ID.get(ruleId);
  invariant(rule !== undefined, `ruleValue: no rule ${ruleId}`);
  const mine = rule.overridable ? project.overrides.filter((o) => o.rule === ruleId) : [];
  const override = mine.find((o) => o.run !== undefined && o.run === runId) ?? mine.find((o) => o.run === undefined);
  return override === undefined ? { value: rule.value, rule } : { value: override.value, rule, override };
}
