import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { type Comparison, judge } from './judge.ts';

/** The note that something is not stated on which a check rests; by a rule that counts 1 for stated. */
export function notStated(
  { project, run }: CheckContext,
  rule: string,
  words: Pick<Comparison, 'check' | 'message' | 'mend'>,
): Finding[] {
  return judge({
    ...words,
    run: run.run.id,
    use: ruleValue(project, rule, run.run.id),
    sense: 'at-least',
    measured: 0,
    unit: 'count',
    severity: 'note',
  });
}
