import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { temperatureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { endPlace, SIDES, type Side, sideText } from './places.ts';

/**
 * The fluid's temperature, deg C, against the hose's own limits, and against what each end's maker states of it; on PTFE hose against
 * what aluminium ends of no stated limit bear. What the bay adds from outside is `heatEstimate`'s affair.
 */
export function temperatureRating(context: CheckContext): Finding[] {
  return [...hoseLimits(context), ...SIDES.flatMap((side) => endLimit(context, side)), ...aluminiumEnds(context)];
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
    message: `Runs at ${temperatureText(temperatureC)}; the hose is rated from ${temperatureText(hose.minTemperatureC)} to ${temperatureText(hose.maxTemperatureC)}.`,
    mend: 'A hose whose core bears the fluid at its temperature; a sleeve does not raise it.',
  });
}

function endLimit({ project, run, lay }: CheckContext, side: Side): Finding[] {
  const { maxTemperatureC, source } = run[side].end;
  if (maxTemperatureC === undefined) return [];
  const { temperatureC } = run.run.service;
  const use = ruleValue(project, 'end-temperature-rating', run.run.id);
  return judge({
    check: 'temperatureRating',
    run: run.run.id,
    use,
    sense: 'at-most',
    limit: maxTemperatureC - use.value,
    measured: temperatureC,
    unit: 'deg C',
    severity: 'stop',
    at: endPlace(lay, side, lay.ends[side].shoulderPoint),
    source: `${source}; ${use.rule.source}`,
    message: `Runs at ${temperatureText(temperatureC)}; ${sideText(side)} is rated to ${temperatureText(maxTemperatureC)}.`,
    mend: 'An end that its maker rates for the fluid at its temperature.',
  });
}

/** Of ends whose maker states what they bear, that holds instead (`endLimit`). */
function aluminiumEnds({ project, run }: CheckContext): Finding[] {
  const ptfe = run.hose.core === 'ptfe-smooth' || run.hose.core === 'ptfe-convoluted';
  const sides = SIDES.filter(
    (side) => run[side].end.material === 'aluminium' && run[side].end.maxTemperatureC === undefined,
  );
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
    message: `Runs at ${temperatureText(temperatureC)} with aluminium at ${sides.map(sideText).join(' and ')}; PTFE hose with aluminium ends is held to ${temperatureText(use.value)}.`,
    mend: 'Steel ends, or ends whose maker rates them for it.',
  });
}
