import type { Finding } from '../../document/lay/schema.ts';
import { HOSE, ratedParts } from '../../document/proof/assemblyPressure.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * The run's working pressure, kPa, against the weakest part of the assembly: the hose at the temperature of its fluid where its
 * table goes by temperature, ends and adapters where theirs are stated. Each part that does not bear it is told. Suction is
 * `suctionPressure`'s and `vacuumKnown`'s. Where the hose's maker states its least burst pressure, the working pressure against that too.
 */
export function pressureRating(context: CheckContext): Finding[] {
  return [...ratings(context), ...burst(context)];
}

function burst({ project, run }: CheckContext): Finding[] {
  const { pressureKpa } = run.run.service;
  const { burstPressureKpa, source } = run.hose;
  if (burstPressureKpa === undefined || pressureKpa <= 0) return [];
  const use = ruleValue(project, 'burst-multiple', run.run.id);
  return judge({
    check: 'pressureRating',
    run: run.run.id,
    use,
    sense: 'at-most',
    limit: burstPressureKpa / use.value,
    ruleLimit: burstPressureKpa / use.rule.value,
    measured: pressureKpa,
    unit: 'kPa',
    severity: 'look',
    source: `${source}; ${use.rule.source}`,
    message: `Works at ${pressureText(pressureKpa)}; the hose bursts at no less than ${pressureText(burstPressureKpa)}, cold and new, ${(burstPressureKpa / pressureKpa).toFixed(1)} times that; ${use.value} times is asked for.`,
    mend: 'A hose of a higher rating.',
  });
}

function ratings({ project, run }: CheckContext): Finding[] {
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
