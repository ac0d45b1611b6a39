import type { Heat } from '../../../../../shared/document/lay/heat.ts';
import type { Severity } from '../../../../../shared/document/lay/schema.ts';
import type { End, Hose } from '../../../../../shared/document/parts/schema.ts';
import { heatAlong } from '../../../../arbitraries/heat.ts';
import { straightLay } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun, sampleSleeve } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

const COOL = { low: 60, likely: 70, high: 80 };
const STEEL = sampleEnd({ material: 'steel' });

/** The band whose figure that decides this gravity is at so many degrees. */
function band(severity: Severity, deg: number) {
  return {
    stop: { low: deg, likely: deg, high: deg },
    look: { low: 60, likely: deg, high: deg },
    note: { low: 60, likely: 80, high: deg },
  }[severity];
}

const along = (heat: Heat, hose: Partial<Hose> = {}, end: End = STEEL): Spoilt =>
  spoilt(straightLay({ heat }), {}, { hoses: [sampleHose(hose)], ends: [end] });
const mouths = (deg: number, end: End): Spoilt => along(heatAlong(COOL, { low: 60, likely: deg, high: deg }), {}, end);

/** A sleeve of 260 deg C at so many degrees over a hose that stays cool. */
function sleeved(deg: number): Spoilt {
  const hot = heatAlong({ low: 60, likely: deg, high: deg }, COOL).running.liner;
  const cool = heatAlong(COOL);
  const heat = { ...cool, running: { ...cool.running, sleeve: hot } };
  const tables = { ends: [STEEL], sleeves: [sampleSleeve({ maxTemperatureC: 260 })] };
  return spoilt(straightLay({ heat }), { runs: [sampleRun({ sleeve: 'sleeve-16' })] }, tables);
}

function around(limit: number): Pick<Mutation, 'limit' | 'kept' | 'past'> {
  return { limit, kept: limit - 0.1, past: limit + 0.1 };
}

const cover = (rule: string, kind: Hose['cover'], limit: number): Mutation => ({
  check: 'heatEstimate',
  rule,
  severity: 'look',
  ...around(limit),
  at: (deg) =>
    along(heatAlong(band('look', deg), COOL), { cover: kind, maxTemperatureC: kind === 'rubber' ? 230 : 600 }),
});

const fluidAt = (temperatureC: number, hose: Partial<Hose>, end: End = STEEL): Spoilt =>
  spoilt(
    straightLay(),
    { runs: [sampleRun({ service: { ...sampleRun().service, temperatureC } })] },
    { hoses: [sampleHose(hose)], ends: [end] },
  );

/** Temperatures: estimated along the hose, and of its fluid. The sample hose bears -55 to 230 deg C. */
export const HOT_MUTATIONS: readonly Mutation[] = [
  ...(['stop', 'look', 'note'] as const).map(
    (severity): Mutation => ({
      check: 'heatEstimate',
      rule: 'heat-liner',
      severity,
      ...around(230),
      at: (deg) => along(heatAlong(band(severity, deg), COOL)),
    }),
  ),
  // Braids: common practice, no source (from memory); textile as MIL-DTL-8794F 6.1, 250 F
  cover('heat-cover-polyester', 'polyester-braid', 150),
  cover('heat-cover-aramid', 'aramid-braid', 200),
  cover('heat-cover-textile', 'textile-braid', 121),
  cover('heat-cover-rubber', 'rubber', 230),
  { check: 'heatEstimate', rule: 'heat-sleeve', severity: 'look', ...around(260), at: sleeved },
  {
    check: 'heatEstimate',
    rule: 'heat-end',
    severity: 'look',
    ...around(180),
    at: (deg) => mouths(deg, sampleEnd({ maxTemperatureC: 180 })),
  },
  // SAE AS1946F 1.2.1: 275 F = 135 C with aluminium fittings
  {
    check: 'heatEstimate',
    rule: 'aluminium-end-temperature',
    severity: 'look',
    ...around(135),
    at: (deg) => mouths(deg, sampleEnd()),
  },
  {
    check: 'temperatureRating',
    rule: 'aluminium-end-temperature',
    severity: 'look',
    ...around(135),
    at: (deg) => fluidAt(deg, {}, sampleEnd()),
  },
  {
    check: 'temperatureRating',
    rule: 'end-temperature-rating',
    severity: 'stop',
    ...around(120),
    at: (deg) => fluidAt(deg, {}, sampleEnd({ maxTemperatureC: 120 })),
  },
  {
    check: 'temperatureRating',
    rule: 'temperature-rating',
    severity: 'stop',
    ...around(230),
    at: (deg) => fluidAt(deg, {}),
  },
  {
    check: 'temperatureRating',
    rule: 'temperature-rating',
    severity: 'stop',
    limit: -20,
    kept: -19.9,
    past: -20.1,
    at: (deg) => fluidAt(deg, { minTemperatureC: -20 }),
  },
];
