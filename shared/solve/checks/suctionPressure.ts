import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import { pumpSide } from '../character/characterOf.ts';
import { flowOf } from '../flow/flowOf.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, sideText } from './places.ts';

/**
 * The pressure at the inlet of the pump, kPa against the air's: the tank open to the air and its level at the port that
 * the hose comes from, less what the hose loses (the high edge of its band), plus what it gains by its fall. Against what
 * a pump usually needs, and against the vacuum at which the hose closes up, where its table says that.
 */
export function suctionPressure({ project, run, lay }: CheckContext): Finding[] {
  const side = pumpSide(run);
  const flow = flowOf(run, lay);
  if (side === undefined || flow === undefined) return [];
  const { low, likely, high } = flow.dropKpa;
  const worst = flow.headKpa - high;
  const at = mouthPlace(lay, side);
  const told = `At the pump, ${sideText(side)}, the pressure is about ${pressureText(flow.headKpa - likely)} against the air's, at worst ${pressureText(worst)}: the hose loses ${pressureText(low)} to ${pressureText(high)}, its fall gives ${pressureText(flow.headKpa)}.`;
  const mend = 'A larger or shorter hose, fewer bends, the tank higher; cold oil needs more than this.';
  const shared = {
    check: 'suctionPressure',
    run: run.run.id,
    sense: 'at-least',
    measured: worst,
    unit: 'kPa',
    at,
    mend,
  } as const;
  const { vacuumLimitKpa, source } = run.hose;
  const closes = vacuumLimitKpa === undefined ? [] : closing();
  if (closes.length > 0) return closes;
  const use = ruleValue(project, 'suction-least-pressure', run.run.id);
  return judge({
    ...shared,
    use,
    severity: 'look',
    message: `${told} ${pressureText(use.value)} is what pumps usually allow.`,
  });

  function closing(): Finding[] {
    const limit = vacuumLimitKpa ?? 0;
    return judge({
      ...shared,
      use: ruleValue(project, 'pressure-rating', run.run.id),
      limit,
      severity: 'stop',
      source,
      message: `${told} The hose stays round down to ${pressureText(limit)}.`,
    });
  }
}
