import type { Breath, Finding } from '../../document/lay/schema.ts';
import { type RuleUse, ruleValue } from '../../document/rules/index.ts';
import { lengthText, percentText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * The hose at the lengths that pressure gives it: it may not go taut or touch (stop), and is looked at when it comes
 * nearer to something than is asked. Its bend is in the report but not judged here: the maker's radius is for the hose as
 * fitted, and the bend of an ideal rod that is nearly taut crowds at the mouths, where the collars of a real one spread it.
 * A lay without breathing was not laid; `laid` speaks of that.
 */
export function breathing(context: CheckContext): Finding[] {
  return (context.lay.breathing ?? []).flatMap((breath) => {
    const rule = breath.change > 0 ? 'breathing-longer' : 'breathing-shorter';
    const use = ruleValue(context.project, rule, context.run.run.id);
    const under = `At ${percentText(breath.change)} of length under pressure`;
    if (breath.taut) return goesTaut(context, use, breath, under);
    return comesNear(context, use, breath, under);
  });
}

function goesTaut({ run, lay }: CheckContext, use: RuleUse, breath: Breath, under: string): Finding[] {
  const missingMm = lay.tautLengthMm - breath.liveLengthMm;
  return judge({
    check: 'breathing',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: lay.tautLengthMm,
    measured: breath.liveLengthMm,
    unit: 'mm',
    severity: 'stop',
    message: `${under} the hose is ${lengthText(missingMm)} shorter than its taut lay: it pulls on its ends.`,
    mend: `Cut it at least ${lengthText(missingMm / (1 + breath.change))} longer.`,
  });
}

function comesNear({ run }: CheckContext, use: RuleUse, { tightest }: Breath, under: string): Finding[] {
  if (tightest === undefined) return [];
  const { clearanceMm, requiredMm, to, at } = tightest;
  const touches = clearanceMm <= 0;
  return judge({
    check: 'breathing',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: requiredMm,
    measured: clearanceMm,
    unit: 'mm',
    severity: touches ? 'stop' : 'look',
    at,
    with: to,
    message: `${under} it ${touches ? 'touches' : `comes within ${lengthText(clearanceMm)} of`} ${to.part ?? to.id}; ${lengthText(requiredMm)} is asked for.`,
    mend: 'Hold it with a clamp there, or lead it further away.',
  });
}
