import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { SIDES, sideText } from './places.ts';

/**
 * The fluid's temperature, deg C, against the hose's own limits, and on PTFE hose against what aluminium ends bear. What
 * the bay adds from outside is `heatDistance`'s affair.
 */
export function temperatureRating(context: CheckContext): Finding[] {
  return [...hoseLimits(context), ...aluminiumEnds(context)];
}

function hoseLimits({ project, run }: CheckContext): Finding[] {
  const { hose } = run;
  const { temperatureC } = run.run.service;
  const use = ruleValue(project, 'temperature-rating', run.run.id);
  const tooCold = temperatureC < hose.minTemperatureC;
  const limit = tooCold ? hose.minTemperatureC + use.value : hose.maxTemperatureC - use.value;
  return judge({
    check: 'temperatureRating',
    run: run.run.id,
    use,
    sense: tooCold ? 'at-least' : 'at-most',
    limit,
    measured: temperatureC,
    unit: 'deg C',
    severity: 'stop',
    source: `${hose.source}; ${use.rule.source}`,
    message: `Runs at ${temperatureC} deg C; the hose is rated from ${hose.minTemperatureC} to ${hose.maxTemperatureC} deg C.`,
    mend: 'A hose whose core bears the fluid at its temperature; a sleeve does not raise it.',
  });
}

function aluminiumEnds({ project, run }: CheckContext): Finding[] {
  const ptfe = run.hose.core === 'ptfe-smooth' || run.hose.core === 'ptfe-convoluted';
  const sides = SIDES.filter((side) => run[side].end.material === 'aluminium');
  if (!ptfe || sides.length === 0) return [];
  const use = ruleValue(project, 'aluminium-end-temperature', run.run.id);
  const { temperatureC } = run.run.service;
  return judge({
    check: 'temperatureRating',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: temperatureC,
    unit: 'deg C',
    severity: 'look',
    message: `Runs at ${temperatureC} deg C with aluminium at ${sides.map(sideText).join(' and ')}; PTFE hose with aluminium ends is held to ${use.value} deg C.`,
    mend: 'Steel ends, or ends whose maker rates them for it.',
  });
}
