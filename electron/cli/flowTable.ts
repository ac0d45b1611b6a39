import type { Flow, Lay } from '../../shared/document/lay/schema.ts';
import { formatNumber, formatPressureBand } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = ['RUN', 'SPEED', 'PRESSURE LOST', 'HOSE', 'BENDS', 'ENDS', 'GAINED BY FALL'];

/** What the wanted flow does in each hose; nothing where no flow is stated. Estimates, each with its band. */
export function flowTable(lays: readonly Lay[]): string[] {
  const flowing = lays.flatMap((lay) => (lay.flow === undefined ? [] : [{ run: lay.run, flow: lay.flow }]));
  if (flowing.length === 0) return [];
  const basis = [...new Set(flowing.flatMap(({ flow }) => flow.basis))];
  return [
    '',
    'FLOW: estimated, the likely loss with its band',
    ...inColumns([HEADINGS, ...flowing.map(({ run, flow }) => [run, ...row(flow)])]),
    ...basis.map((line) => `  taken: ${line}`),
  ];
}

function row(flow: Flow): string[] {
  const kpa = (value: number): string => `${formatNumber(value, 1)} kPa`;
  return [
    `${formatNumber(flow.speedMPerS, 2, 'up')} m/s`,
    formatPressureBand(flow.dropKpa),
    kpa(flow.hoseKpa),
    kpa(flow.bendsKpa),
    kpa(flow.endsKpa),
    kpa(flow.headKpa),
  ];
}
