import type { Heat, HeatBand, HeatTrack } from '../../document/lay/heat.ts';
import type { Finding, Severity } from '../../document/lay/schema.ts';
import { type RuleUse, ruleValue } from '../../document/rules/index.ts';
import { temperatureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge, meets } from './judge.ts';
import { placeAt, placeText, SIDES, sideText } from './places.ts';

/**
 * The temperatures estimated along the hose, deg C, running and in hot soak, against what liner, cover, sleeve and ends
 * bear. How grave: over the limit with the whole band, every assumed input at its cool edge, forbids cutting; with the
 * likely value, it is looked at; with the hot edge alone, it is a note, and a run is told of its worst one only. A sleeve
 * never raises what the hose bears: it is held against its own limit, and the hose in it against the hose's.
 */
export function heatEstimate(context: CheckContext): Finding[] {
  const { heat } = context.lay;
  if (heat === undefined) return [];
  const found = [
    ...linerLimit(context, heat),
    ...coverLimit(context, heat),
    ...sleeveLimit(context, heat),
    ...SIDES.flatMap((side) => endLimits(context, heat, side)),
  ].flatMap((limit) => worstOf(context, heat, limit));
  // What passes only by the project's own limit stays said.
  const grave = found.filter((f) => f.severity !== 'note' || f.overrideReason !== undefined);
  if (grave.length > 0) return grave;
  const worst = found.toSorted((a, b) => a.margin - b.margin)[0];
  return worst === undefined ? [] : [worst];
}

/** One thing that has to bear a temperature. */
interface Bears {
  readonly use: RuleUse;
  readonly limit: number;
  readonly ruleLimit: number;
  /** what it is, in the middle of a sentence */
  readonly name: string;
  readonly source: string;
  readonly running: HeatTrack;
  /** absent = hot soak is none of its concern */
  readonly soak?: HeatTrack;
  readonly mend?: string;
  /** the only place it has, by number; absent = anywhere along the hose */
  readonly only?: number;
}

function linerLimit({ project, run }: CheckContext, heat: Heat): Bears[] {
  const { hose } = run;
  // A fluid that is too hot by itself is said of by `temperatureRating`, once.
  if (run.run.service.temperatureC > hose.maxTemperatureC) return [];
  return [
    {
      ...ownLimit(ruleValue(project, 'heat-liner', run.run.id), hose.maxTemperatureC, hose.source),
      name: 'the liner',
      running: heat.running.liner,
      soak: heat.soak.liner,
    },
  ];
}

function coverLimit({ project, run }: CheckContext, heat: Heat): Bears[] {
  const { hose } = run;
  const told = { running: heat.running.cover, soak: heat.soak.cover };
  if (hose.cover === 'steel-braid') return [];
  if (hose.cover === 'rubber') {
    const use = ruleValue(project, 'heat-cover-rubber', run.run.id);
    return [{ ...ownLimit(use, hose.maxTemperatureC, hose.source), name: 'the rubber cover', ...told }];
  }
  const cloth = { 'polyester-braid': 'polyester', 'aramid-braid': 'aramid', 'textile-braid': 'textile' }[hose.cover];
  const use = ruleValue(project, `heat-cover-${cloth}`, run.run.id);
  const name = `the ${cloth} braid`;
  return [{ use, limit: use.value, ruleLimit: use.rule.value, source: use.rule.source, name, ...told }];
}

/** A sleeve's limit is for lasting use; for minutes it bears far more (about 1090 deg C by bstbraidedsleeve.com), so not in soak. */
function sleeveLimit({ project, run }: CheckContext, { running }: Heat): Bears[] {
  const { sleeve } = run;
  if (sleeve === undefined || running.sleeve === undefined) return [];
  const use = ruleValue(project, 'heat-sleeve', run.run.id);
  return [
    {
      ...ownLimit(use, sleeve.maxTemperatureC, sleeve.source),
      name: 'the sleeve',
      running: running.sleeve,
    },
  ];
}

/** What an end bears where the hose leaves it: its own figure, and aluminium ends on PTFE hose what the standard has. */
function endLimits({ project, run }: CheckContext, heat: Heat, side: 'a' | 'b'): Bears[] {
  const { end } = run[side];
  const { temperatureC } = run.run.service;
  const only = side === 'a' ? 0 : heat.arcLengthMm.length - 1;
  const told = { running: heat.running.liner, soak: heat.soak.liner, only };
  const ptfe = run.hose.core === 'ptfe-smooth' || run.hose.core === 'ptfe-convoluted';
  const alloy = ruleValue(project, 'aluminium-end-temperature', run.run.id);
  const own = ruleValue(project, 'heat-end', run.run.id);
  const { maxTemperatureC } = end;
  const bears: Bears[] = [];
  if (maxTemperatureC !== undefined && temperatureC <= maxTemperatureC)
    bears.push({ ...ownLimit(own, maxTemperatureC, end.source), name: `the mouth of ${sideText(side)}`, ...told });
  else if (maxTemperatureC === undefined && ptfe && end.material === 'aluminium' && temperatureC <= alloy.value)
    bears.push({
      use: alloy,
      limit: alloy.value,
      ruleLimit: alloy.rule.value,
      source: alloy.rule.source,
      name: `the mouth of ${sideText(side)}, aluminium on PTFE hose,`,
      mend: 'Steel ends, or ends whose maker rates them for it. Else:',
      ...told,
    });
  return bears;
}

function ownLimit(use: RuleUse, limitC: number, source: string): Pick<Bears, 'use' | 'limit' | 'ruleLimit' | 'source'> {
  return {
    use,
    limit: limitC - use.value,
    ruleLimit: limitC - use.rule.value,
    source: `${source}; ${use.rule.source}`,
  };
}

type When = 'running' | 'soak';

interface Hot {
  readonly when: When;
  readonly place: number;
  readonly band: HeatBand;
  readonly severity: Severity;
}

/** The graver of running and hot soak, and of two alike the hotter. */
function worstOf(context: CheckContext, heat: Heat, bears: Bears): Finding[] {
  const rank: readonly Severity[] = ['stop', 'look', 'note'];
  const states: Hot[] = [hottest(bears, 'running', bears.running)];
  if (bears.soak !== undefined) states.push(hottest(bears, 'soak', bears.soak));
  const hot = states.toSorted(
    (a, b) => rank.indexOf(a.severity) - rank.indexOf(b.severity) || b.band.likely - a.band.likely,
  )[0];
  return hot === undefined ? [] : judgeHeat(context, heat, bears, hot);
}

/** Where a thing is hottest by the figure that decides how grave it is. */
function hottest(bears: Bears, when: When, track: HeatTrack): Hot {
  const over = (values: readonly number[]): boolean =>
    !meets('at-most', values[most(values, bears.only)] ?? 0, bears.limit);
  const severity = over(track.low) ? 'stop' : over(track.likely) ? 'look' : 'note';
  const place = most({ stop: track.low, look: track.likely, note: track.high }[severity], bears.only);
  const at = (values: readonly number[]): number => values[place] ?? 0;
  return { when, place, severity, band: { low: at(track.low), likely: at(track.likely), high: at(track.high) } };
}

function most(values: readonly number[], only?: number): number {
  return only ?? values.reduce((best, value, i) => (value > (values[best] ?? value) ? i : best), 0);
}

function judgeHeat(
  { run, lay }: CheckContext,
  heat: Heat,
  bears: Bears,
  { when, place, band, severity }: Hot,
): Finding[] {
  const at = placeAt(lay, heat.arcLengthMm[place] ?? 0);
  const source = heat.sources[0];
  const { low, likely, high } = band;
  const state = when === 'running' ? 'running' : 'in hot soak, the engine just off,';
  const tail = severity === 'note' ? ` Only the hot edge of the estimate is over.` : '';
  const from = source === undefined ? '' : ` Most heat comes from ${source.from.part ?? source.from.id}.`;
  return judge({
    check: 'heatEstimate',
    run: run.run.id,
    use: bears.use,
    sense: 'at-most',
    limit: bears.limit,
    ruleLimit: bears.ruleLimit,
    measured: severity === 'note' ? high : likely,
    unit: 'deg C',
    severity,
    at,
    ...(source === undefined ? {} : { with: source.from }),
    source: bears.source,
    message: `Estimated ${temperatureText(likely)} (${low.toFixed(0)} to ${high.toFixed(0)}) at ${bears.name} ${state} ${placeText(at)}; it bears ${temperatureText(bears.limit)}.${tail}${from}`,
    mend: `${bears.mend === undefined ? '' : `${bears.mend} `}${mendOf(run.sleeve !== undefined, when)}`,
  });
}

function mendOf(sleeved: boolean, when: When): string {
  const sleeve = sleeved ? '' : ' a sleeve on it (before the second end goes on),';
  const air =
    when === 'running' ? ' more air across it' : ' a way out for the hot air, or letting the engine idle cool';
  return `More distance, a metal shield between,${sleeve}${air}; state what you know of air and skins, and lay it again. A sleeve keeps heat off for a while and never raises what the hose bears.`;
}
