import type { Heat, HeatBand } from '../../shared/document/lay/heat.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { formatNumber } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = ['RUN', 'LINER', 'COVER', 'SLEEVE', 'AT', 'SOAK: LINER', 'SOAK: COVER', 'MOST HEAT FROM'];

/** The hottest place of each hose, running and in hot soak; nothing where no skin is hot. Estimates, each with its band. */
export function heatTable(lays: readonly Lay[]): string[] {
  const heated = lays.flatMap((lay) => (lay.heat === undefined ? [] : [{ run: lay.run, heat: lay.heat }]));
  if (heated.length === 0) return [];
  const basis = [...new Set(heated.flatMap(({ heat }) => heat.basis))];
  return [
    '',
    'HEAT: estimated, °C, where the cover is hottest running, and where it is in hot soak; the likely value with its band',
    ...inColumns([HEADINGS, ...heated.map(({ run, heat }) => [run, ...row(heat)])]),
    ...basis.map((line) => `  taken: ${line}`),
  ];
}

function row({ running, soak, sources }: Heat): string[] {
  const { at, liner, cover, sleeve } = running.hottest;
  const most = sources[0];
  return [
    bandText(liner),
    bandText(cover),
    sleeve === undefined ? '-' : bandText(sleeve),
    `${formatNumber(at.arcLengthMm, 0)} mm`,
    ...[soak.hottest.liner, soak.hottest.cover].map(bandText),
    most === undefined
      ? 'nothing hot in sight'
      : `${most.from.part ?? most.from.id} ${formatNumber(most.share * 100, 0)} %`,
  ];
}

/** `117 (112 to 125)`, edges rounded outwards. */
function bandText({ low, likely, high }: HeatBand): string {
  return `${formatNumber(likely, 0)} (${formatNumber(low, 0, 'down')} to ${formatNumber(high, 0, 'up')})`;
}
