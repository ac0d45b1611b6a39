import { inspectionOf, type LookAt, lookText } from '../../document/inspection/inspectionOf.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { monthsBetween } from '../../document/life/months.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/**
 * A hose in use, once it is time to look it over again, with where and with what; and what was found on it and not put right. Only where the
 * project states when the hose was fitted.
 */
export function inspection(context: CheckContext): Finding[] {
  return [...due(context), ...open(context)];
}

function due({ project, run, lay, today }: CheckContext): Finding[] {
  const use = ruleValue(project, 'inspection-months', run.run.id);
  const { lastOn, dueOn, places, removal } = inspectionOf(run, lay, use.value, today);
  if (lastOn === undefined || dueOn === undefined || today === undefined) return [];
  return judge({
    check: 'inspection',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: monthsBetween(lastOn, today),
    unit: 'months',
    severity: 'look',
    message: [`It was due to be looked over on ${dueOn}.`, ...places.map(placeLine), ...removal].join(' '),
    mend: 'Look it over, and write down when and what was found.',
  });
}

function placeLine(look: LookAt): string {
  return `${placeText(look.at)}, ${lookText(look)}.`;
}

function open({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'inspection-open', run.run.id);
  return inspectionOf(run, lay, 0).open.flatMap(({ on, found }) =>
    judge({
      check: 'inspection',
      run: run.run.id,
      use,
      sense: 'at-most',
      measured: 1,
      unit: 'count',
      severity: 'look',
      message: `Found on ${on} and not put right: ${found}`,
      mend: 'Put it right and write down when, with a photo; where it cannot be, a new hose.',
    }),
  );
}
