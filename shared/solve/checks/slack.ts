import type { Finding } from '../../document/lay/schema.ts';
import { type RuleUse, ruleValue } from '../../document/rules/index.ts';
import { lengthText, percentText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { type Comparison, judge } from './judge.ts';

/**
 * Slack of the lay (live over taut length, less one) against the handbook band: under the least it is too tight to cut,
 * under the wanted slack or over the most it is looked at, over the band it is noted. One broken limit at most, the gravest.
 */
export function slack(context: CheckContext): Finding[] {
  return [...tight(context), ...loose(context)];
}

function tight(context: CheckContext): Finding[] {
  const { project, run, lay } = context;
  const least = ruleValue(project, 'slack-least', run.run.id);
  const wanted = ruleValue(project, 'slack-wanted', run.run.id);
  const missingMm = lay.tautLengthMm * (wanted.value - lay.slack);
  const message = `Slack is ${percentText(lay.slack)}, ${percentText(wanted.value)} is wanted.${breathingText(context)}`;
  const isHeld =
    run.run.cutLengthMm === undefined && lay.supports.some(({ kind, proposed }) => kind !== 'waypoint' && !proposed);
  const room = isHeld ? ' where what holds it leaves room for that; else move one of its clamps' : '';
  const mend = `Cut it ${lengthText(missingMm)} longer${room}.`;
  const stop = judge({ ...compare(context, least, 'at-least', 'stop'), message, mend });
  return stop.some((f) => f.severity === 'stop')
    ? stop
    : [...judge({ ...compare(context, wanted, 'at-least', 'look'), message, mend }), ...stop];
}

function loose(context: CheckContext): Finding[] {
  const { project, run, lay } = context;
  const most = ruleValue(project, 'slack-most', run.run.id);
  const wanted = ruleValue(project, 'slack-wanted', run.run.id);
  const bandTop = Math.max(wanted.rule.range?.high ?? wanted.value, wanted.value);
  const message = `Slack is ${percentText(lay.slack)}; the handbook band ends at ${percentText(bandTop)}, and a sloppy hose finds something to rub on.`;
  const mend = `Cut it shorter, or clamp it: ${lengthText(lay.tautLengthMm * (lay.slack - wanted.value))} more than wanted.`;
  const look = judge({ ...compare(context, most, 'at-most', 'look'), message, mend });
  if (look.length > 0) return look;
  return judge({
    ...compare(context, { value: bandTop, rule: wanted.rule }, 'at-most', 'note'),
    message,
    mend,
  });
}

type Measured = Omit<Comparison, 'message' | 'mend'>;

function compare(
  { run, lay }: CheckContext,
  use: RuleUse,
  sense: Comparison['sense'],
  severity: Comparison['severity'],
): Measured {
  return {
    check: 'slack',
    run: run.run.id,
    use,
    sense,
    measured: lay.slack,
    unit: 'ratio',
    severity,
  };
}

/** Pressure can shorten a hose by s, which uses up 1 / (1 - s) - 1 of slack. Said where it would draw the hose taut. */
function breathingText({ project, run, lay }: CheckContext): string {
  const shortens = ruleValue(project, 'breathing-shorter', run.run.id).value;
  const uses = 1 / (1 + shortens) - 1;
  if (run.run.service.pressureKpa <= 0 || lay.slack >= uses) return '';
  return ` Under pressure a hose can shorten by ${percentText(-shortens)}, which takes ${percentText(uses)}: this one would pull taut.`;
}
