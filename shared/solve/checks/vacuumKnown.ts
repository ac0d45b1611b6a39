import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { notStated } from './notStated.ts';

/** Dash sizes from which a hose on suction may need a coil inside. */
const COIL_FROM_DASH = 24;

/**
 * A hose on suction: whether its table says how much vacuum it bears, and where it does, the run's own pressure, kPa against
 * the air's, against that. The pressure that the flow makes at the pump is judged by `suctionPressure`.
 */
export function vacuumKnown(context: CheckContext): Finding[] {
  const { purpose, pressureKpa } = context.run.run.service;
  if (purpose !== 'oil-suction' && purpose !== 'raw-water' && pressureKpa >= 0) return [];
  const { vacuumLimitKpa } = context.run.hose;
  return vacuumLimitKpa === undefined ? unknown(context) : closing(context, vacuumLimitKpa);
}

function unknown(context: CheckContext): Finding[] {
  const { dash } = context.run.hose;
  const coil = dash >= COIL_FROM_DASH ? ` At -${dash} it may need a coil inside.` : '';
  return notStated(context, 'vacuum-known', {
    check: 'vacuumKnown',
    message: `On suction, and the table does not say how much vacuum this hose bears before it closes up.${coil}`,
    mend: "State vacuum_limit_kpa from the maker's sheet.",
  });
}

function closing({ project, run }: CheckContext, vacuumLimitKpa: number): Finding[] {
  const { pressureKpa } = run.run.service;
  return judge({
    check: 'vacuumKnown',
    run: run.run.id,
    use: ruleValue(project, 'pressure-rating', run.run.id),
    sense: 'at-least',
    limit: vacuumLimitKpa,
    measured: pressureKpa,
    unit: 'kPa',
    severity: 'stop',
    source: run.hose.source,
    message: `Works at ${pressureText(pressureKpa)} against the air's; the hose stays round down to ${pressureText(vacuumLimitKpa)}.`,
    mend: 'A hose that bears more vacuum, or one with a coil inside.',
  });
}
