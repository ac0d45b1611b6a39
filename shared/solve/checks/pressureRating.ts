import type { Finding } from '../../document/lay/schema.ts';
import { HOSE, ratedParts } from '../../document/proof/assemblyPressure.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * The run's working pressure, kPa, against the weakest part of the assembly: the hose at the temperature of its fluid where its
 * table goes by temperature, ends and adapters where theirs are stated. Each part that does not bear it is told. Suction is
 * `suctionPressure`'s and `vacuumKnown`'s.
 */
export function pressureRating({ project, run }: CheckContext): Finding[] {
  const { pressureKpa } = run.run.service;
  const use = ruleValue(project, 'pressure-rating', run.run.id);
  return ratedParts(run).flatMap(({ part, maxPressureKpa, source, note }) => {
    const limit = maxPressureKpa * use.value;
    const hot = note ?? 'less when hot';
    return judge({
      check: 'pressureRating',
      run: run.run.id,
      use,
      sense: 'at-most',
      limit,
      measured: pressureKpa,
      unit: 'kPa',
      severity: 'stop',
      source: `${source}; ${use.rule.source}`,
      message: `Works at ${pressureText(pressureKpa)}; ${part} is rated for ${pressureText(limit)}${part === HOSE ? `, ${hot}` : ''}.`,
      mend: 'A hose and ends of a higher rating.',
    });
  });
}
