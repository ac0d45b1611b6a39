import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { LIFELINES } from './lifelines.ts';
import { SIDES, sideText } from './places.ts';

/** Push-on joints: where they have no business, and their pressure and temperature. */
export function pushOn(context: CheckContext): Finding[] {
  const { project, run } = context;
  const sides = SIDES.filter((side) => run[side].end.joint === 'push-on');
  if (sides.length === 0) return [];
  const where = sides.map(sideText).join(' and ');
  const { purpose, pressureKpa, temperatureC } = run.run.service;
  const of = (rule: string) => {
    const use = ruleValue(project, rule, run.run.id);
    return {
      check: 'pushOn',
      run: run.run.id,
      use,
      sense: 'at-most',
    } as const;
  };
  const mend = 'A crimped or a screw-together end.';
  return [
    ...judge({
      ...of('push-on-lifeline'),
      measured: LIFELINES.includes(purpose) ? sides.length : 0,
      unit: 'count',
      severity: 'stop',
      message: `Push-on at ${where}, on a hose that may not be lost.`,
      mend,
    }),
    ...judge({
      ...of('push-on-ptfe'),
      measured: run.hose.core === 'ptfe-smooth' || run.hose.core === 'ptfe-convoluted' ? sides.length : 0,
      unit: 'count',
      severity: 'stop',
      message: `Push-on at ${where} on PTFE hose, which does not grip a barb.`,
      mend,
    }),
    ...judge({
      ...of('push-on-pressure'),
      measured: pressureKpa,
      unit: 'kPa',
      severity: 'stop',
      message: `Works at ${pressureText(pressureKpa)} with push-on at ${where}.`,
      mend,
    }),
    ...judge({
      ...of('push-on-temperature'),
      measured: temperatureC,
      unit: 'deg C',
      severity: 'stop',
      message: `Runs at ${temperatureC} deg C with push-on at ${where}.`,
      mend,
    }),
  ];
}
