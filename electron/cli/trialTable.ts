import type { EndTrial, TrialEntry } from '../../shared/document/endTrial/schema.ts';
import type { Finding, Lay } from '../../shared/document/lay/schema.ts';
import {
  formatCost,
  formatCutLength,
  formatNumber,
  formatSlack,
  formatTemperatureDifference,
} from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';
import { clockText, tightest } from './reportTable.ts';

interface Column {
  readonly heading: string;
  /** undefined = not told of this pair; a column that tells nothing of any pair is left out */
  readonly cell: (entry: TrialEntry) => string | undefined;
}

const COLUMNS: readonly Column[] = [
  { heading: 'END A', cell: ({ ends }) => ends.a },
  { heading: 'END B', cell: ({ ends }) => ends.b },
  { heading: 'CUT', cell: ({ lay }) => formatCutLength(lay.cutLengthMm) },
  { heading: 'CLOCK', cell: ({ lay }) => clockText(lay.clock) },
  { heading: 'SLACK', cell: ({ lay }) => formatSlack(lay.slack) },
  { heading: 'LEAST RADIUS', cell: ({ lay: { minRadius } }) => radiusText(minRadius) },
  { heading: 'ROOM OVER WHAT IS ASKED', cell: ({ lay }) => roomText(lay) },
  {
    heading: 'UNDER ITS HEAT LIMIT, ABOUT',
    cell: ({ heatRoomC }) => (heatRoomC === undefined ? undefined : formatTemperatureDifference(heatRoomC, 'down')),
  },
  { heading: 'HOSE AND ENDS COST', cell: ({ cost }) => (cost === undefined ? undefined : formatCost(cost)) },
  { heading: 'CLAMPS', cell: ({ lay }) => String(lay.supports.filter((s) => s.proposed).length) },
  { heading: 'LOOKS', cell: counted('look') },
  { heading: 'STOPS', cell: counted('stop') },
];

function counted(severity: Finding['severity']): Column['cell'] {
  return ({ findings }) => String(findings.filter((f) => f.severity === severity).length);
}

function radiusText({ radiusMm, limitMm }: Lay['minRadius']): string {
  return `${formatNumber(radiusMm, 1, 'down')} of ${formatNumber(limitMm, 1, 'up')} mm`;
}

function roomText({ clearances }: Lay): string {
  const near = tightest(clearances);
  if (near === undefined) return 'nothing near';
  return `${formatNumber(near.clearanceMm - near.requiredMm, 1, 'down')} mm at ${near.to.part ?? near.to.id}`;
}

/** An end trial for a person at a terminal: a row for each pair of ends with which the run lies clean, best first. */
export function trialTable({ run, tried, entries }: EndTrial): string {
  const found = `${run}: ${entries.length} of ${tried} pairs of ends lie clean`;
  if (entries.length === 0) return `${found}\n`;
  const told = COLUMNS.filter(({ cell }) => entries.some((entry) => cell(entry) !== undefined));
  const rows = entries.map((entry) => told.map(({ cell }) => cell(entry) ?? '-'));
  return [found, '', ...inColumns([told.map(({ heading }) => heading), ...rows]), ''].join('\n');
}
