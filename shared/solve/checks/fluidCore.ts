import type { Finding, Severity } from '../../document/lay/schema.ts';
import { fluidCoreCell, type Grade } from '../../document/materials/fluidCore.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { FLUID_WORDS } from '../../document/wording/serviceWords.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

const SEVERITIES: Record<Grade, Severity> = { 0: 'stop', 0.5: 'note', 1: 'note' };

/**
 * The fluid in the hose's core: by its maker's own list where there is one, else by the trade's tables. Not suitable forbids cutting, on
 * conditions is to be known. A fluid its maker does not list is looked at, whatever the tables say.
 */
export function fluidCore({ project, run }: CheckContext): Finding[] {
  const { hose } = run;
  const { fluid } = run.run.service;
  const cell = fluidCoreCell(hose.core, fluid);
  const use = ruleValue(project, 'core-suits-fluid', run.run.id);
  const shared = {
    check: 'fluidCore',
    run: run.run.id,
    use,
    sense: 'at-least',
    unit: 'count',
  } as const;
  const mend = 'A hose whose maker lists it for this fluid.';
  if (hose.listedFluids?.includes(fluid) === true) {
    if (cell?.grade !== 0) return [];
    return judge({
      ...shared,
      measured: 0,
      severity: 'note',
      source: `${hose.source}; against it: ${cell.source}`,
      message: `Its maker lists this hose for ${FLUID_WORDS[fluid].toLowerCase()}, and that holds; of a core of ${hose.core} the trade says: ${cell.why}.`,
    });
  }
  if (cell?.grade === 0 || hose.listedFluids === undefined)
    return cell === undefined
      ? []
      : judge({
          ...shared,
          measured: cell.grade,
          severity: SEVERITIES[cell.grade],
          source: cell.source,
          message: `${FLUID_WORDS[fluid]} in a core of ${hose.core}: ${cell.why}.`,
          mend: cell.grade === 0 ? mend : "Ask the hose's maker, and write what he lists in the table of hoses.",
        });
  if (fluid === 'air' || fluid === 'other') return [];
  return judge({
    ...shared,
    measured: 0.5,
    severity: 'look',
    source: `${hose.source}; ${use.rule.source}`,
    message: `The maker lists this hose for ${hose.listedFluids.map((one) => FLUID_WORDS[one].toLowerCase()).join(', ')}, not for ${FLUID_WORDS[fluid].toLowerCase()}.`,
    mend,
  });
}
