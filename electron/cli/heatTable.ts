import type { Heat, HeatBand } from '../../shared/document/lay/heat.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { formatNumber, formatTemperatureBand } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = ['RUN', 'LINER', 'COVER', 'SLEEVE', 'AT', 'LINER IN SOAK', 'COVER IN SOAK', 'MOST HEAT FROM'];

/** The hottest place of each hose, running and in hot soak; nothing where no skin is hot. Estimates, each with its band. */
export function heatTable(lays: readonly Lay[]): string[] {
  const heated = lays.flatMap((lay) => (lay.heat === undefined ? [] : [{ run: lay.run, heat: lay.heat }]));
  if (heated.length === 0) return [];
  const basis = [...new Set(heated.flatMap(({ heat }) => heat.basis))];
  return [
    '',
    'HEAT: estimated where the cover is hottest running, and the most that hot soak gives; the likely value with its band',
    ...inColumns([HEADINGS, ...heated.map(({ run, heat }) => [run, ...row(heat)])]),
    ...basis.map((line) => `  taken: ${line}`),
  ];
}

function row({ running, soak, sources }: Heat): string[] {
  const { at, liner, cover, sleeve } = running.hottest;
  const most = sources[0];
  return [
    formatTemperatureBand(liner),
    formatTemperatureBand(cover),
    sleeve === undefined ? '-' : formatTemperatureBand(sleeve),
    `${formatNumber(at.arcLengthMm, 0)} mm`,
    ...[soak.hottest.liner, soak.hottest.cover].map((band: HeatBand) => formatTemperatureBand(band)),
    most === undefined
      ? 'nothing hot in sight'
      : `${most.from.part ?? most.from.id} ${formatNumber(most.share * 100, 0)} %`,
  ];
}
