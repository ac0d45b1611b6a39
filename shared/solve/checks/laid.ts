import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { OUTCOME_WORDS } from '../../document/wording/findingWords.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/** Whether there is a lay at all that lacks nothing. Near misses and no ways forbid cutting. */
export function laid({ project, run, lay }: CheckContext): Finding[] {
  const { word, meaning } = OUTCOME_WORDS[lay.outcome];
  return judge({
    check: 'laid',
    run: run.run.id,
    use: ruleValue(project, 'laid', run.run.id),
    sense: 'at-most',
    limit: 0,
    measured: lay.outcome === 'laid' ? 0 : 1,
    unit: 'lays that break a limit',
    severity: 'stop',
    message: `${word}: ${lay.reason ?? meaning}`,
  });
}
