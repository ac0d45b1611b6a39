import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * The run's working pressure, kPa, against the hose's own limit. A limit holds at the temperature its maker states, and
 * falls with heat; that is said, not computed. Suction is not judged: the tables carry no vacuum limit.
 */
export function pressureRating({ project, run }: CheckContext): Finding[] {
  const { hose } = run;
  const { pressureKpa } = run.run.service;
  const use = ruleValue(project, 'pressure-rating', run.run.id);
  const limit = hose.maxPressureKpa * use.value;
  return judge({
    check: 'pressureRating',
    run: run.run.id,
    use,
    sense: 'at-most',
    limit,
    measured: pressureKpa,
    unit: 'kPa',
    severity: 'stop',
    source: `${hose.source}; ${use.rule.source}`,
    message: `Works at ${pressureText(pressureKpa)}; the hose is rated for ${pressureText(limit)}, less when hot.`,
    mend: 'A hose and ends of a higher rating.',
  });
}
