import type { Finding } from '../../document/lay/schema.ts';
import type { SystemTestRecord } from '../../document/project/schema.ts';
import { type SystemTest, systemTest } from '../../document/proof/systemTest.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { type Comparison, judge } from './judge.ts';

/**
 * The test of an exhaust or of a boat's fuel system, as it was written down of one of its hoses: passed, with pressure and time enough.
 * One that is not written down yet is asked for on the build sheet.
 */
export function systemTested(context: CheckContext): Finding[] {
  const { project, run } = context;
  const record = run.run.asBuilt?.systemTest;
  const test = systemTest(run.run.service, project.vehicle);
  if (record === undefined || test === undefined) return [];
  return [...passed(context, test, record), ...highEnough(context, test, record), ...longEnough(context, test, record)];
}

function told({ project, run }: CheckContext, rule: string) {
  const use = ruleValue(project, rule, run.run.id);
  return { check: 'systemTested', run: run.run.id, use } as const satisfies Partial<Comparison>;
}

function passed(context: CheckContext, { system }: SystemTest, { on, failed = false }: SystemTestRecord): Finding[] {
  return judge({
    ...told(context, 'system-test-passed'),
    sense: 'at-most',
    measured: failed ? 1 : 0,
    unit: 'count',
    severity: 'stop',
    message: `The ${system} lost pressure in its test on ${on}: the engine is not started.`,
    mend: 'Find the joint that leaks with soapy water, make it good, test again.',
  });
}

function highEnough(context: CheckContext, { system, rule }: SystemTest, record: SystemTestRecord): Finding[] {
  const { use, ...head } = told(context, rule);
  return judge({
    ...head,
    use,
    sense: 'at-least',
    measured: record.pressureKpa,
    unit: 'kPa',
    severity: 'look',
    message: `The ${system} was tested at ${pressureText(record.pressureKpa)} on ${record.on}; ${pressureText(use.value)} is asked for.`,
    mend: 'Test it again at the pressure that is asked for, and no more.',
  });
}

function longEnough(context: CheckContext, { system, holdS }: SystemTest, record: SystemTestRecord): Finding[] {
  if (holdS === undefined || record.holdS === undefined) return [];
  const { use, ...head } = told(context, 'exhaust-test-hold');
  return judge({
    ...head,
    use,
    sense: 'at-least',
    measured: record.holdS,
    unit: 's',
    severity: 'look',
    message: `The ${system} held its pressure for ${record.holdS} s on ${record.on}; ${use.value} s are asked for.`,
    mend: 'Test it again for the whole time.',
  });
}
