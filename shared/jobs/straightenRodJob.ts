import type { Result } from '../base/result.ts';
import { clockToleranceRule } from '../document/rules/clockRules.ts';
import { ruleValue } from '../document/rules/index.ts';
import { straighten } from '../solve/straighten/straighten.ts';
import type { JobInput, JobOutput } from './contract.ts';

/** Cut length and clock of the hose that is to lie like a digitised rod. */
export async function straightenRodJob({
  cutOffMm = { a: 0, b: 0 },
  clockTolerance,
  ...rod
}: JobInput<'straightenRod'>): Promise<Result<JobOutput<'straightenRod'>>> {
  const toleranceDeg = (overallLengthMm: number): number =>
    ruleValue({ overrides: [] }, clockToleranceRule(overallLengthMm, clockTolerance)).value;
  return straighten({ ...rod, cutOffMm, toleranceDeg });
}
