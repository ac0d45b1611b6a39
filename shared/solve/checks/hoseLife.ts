import type { Finding } from '../../document/lay/schema.ts';
import { dueOn, isOverdue, hoseLife as lifeOf } from '../../document/life/hoseLife.ts';
import { madeOn } from '../../document/life/madeOn.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * A hose that is past its usual life: only where the run states when its hose was made, or the roll it was cut from when that was cured, and
 * the host says what day it is.
 * A hose that is not yet due is told on its build sheet.
 */
export function hoseLife({ project, run, today }: CheckContext): Finding[] {
  const made = madeOn(run);
  const life = lifeOf(run.hose.core, run.run.service, project.vehicle);
  if (made === undefined || today === undefined || life.years === undefined) return [];
  const due = dueOn(made.day, life.years);
  const use = ruleValue(project, 'hose-life', run.run.id);
  return judge({
    check: 'hoseLife',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: isOverdue(due, today) ? 1 : 0,
    unit: 'count',
    severity: 'look',
    source: life.dissent === undefined ? life.source : `${life.source}. Others: ${life.dissent}`,
    message: `Made ${made.day}, ${made.by}: ${life.kind}, usually ${life.years} years; it was due ${due}.`,
    mend: 'A new hose; state when that one was made.',
  });
}
