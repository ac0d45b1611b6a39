import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/** Dash sizes from which a hose on suction may need a coil inside. */
const COIL_FROM_DASH = 24;

/** A hose on suction of which its table does not say how much vacuum it bears; what is said is judged by `suctionPressure`. */
export function vacuumKnown({ project, run }: CheckContext): Finding[] {
  const { purpose, pressureKpa } = run.run.service;
  if (purpose !== 'oil-suction' && purpose !== 'raw-water' && pressureKpa >= 0) return [];
  const use = ruleValue(project, 'vacuum-known', run.run.id);
  const coil = run.hose.dash >= COIL_FROM_DASH ? ` At -${run.hose.dash} it may need a coil inside.` : '';
  return judge({
    check: 'vacuumKnown',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: use.value,
    ruleLimit: use.rule.value,
    measured: run.hose.vacuumLimitKpa === undefined ? 0 : 1,
    unit: 'count',
    severity: run.hose.dash >= COIL_FROM_DASH ? 'look' : 'note',
    message: `On suction, and the table does not say how much vacuum this hose bears before it closes up.${coil}`,
    mend: "State vacuum_limit_kpa from the maker's sheet.",
  });
}
