import type { EndTrial, TrialEntry } from '../../shared/document/endTrial/schema.ts';
import { formatCutLength, formatNumber, formatSlack } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';
import { clockText, tightest } from './reportTable.ts';

const HEADINGS = [
  'END A',
  'END B',
  'CUT',
  'CLOCK',
  'SLACK',
  'LEAST RADIUS',
  'ROOM OVER WHAT IS ASKED',
  'CLAMPS',
  'LOOKS',
  'STOPS',
];

/** An end trial for a person at a terminal: a row for each pair of ends with which the run lies clean, best first. */
export function trialTable({ run, tried, entries }: EndTrial): string {
  const found = `${run}: ${entries.length} of ${tried} pairs of ends lie clean`;
  if (entries.length === 0) return `${found}\n`;
  return [found, '', ...inColumns([HEADINGS, ...entries.map(rowOf)]), ''].join('\n');
}

function rowOf({ ends, lay, findings }: TrialEntry): string[] {
  const near = tightest(lay.clearances);
  const room =
    near === undefined
      ? 'nothing near'
      : `${formatNumber(near.clearanceMm - near.requiredMm, 1, 'down')} mm at ${near.to.part ?? near.to.id}`;
  const count = (severity: string): string => String(findings.filter((f) => f.severity === severity).length);
  return [
    ends.a,
    ends.b,
    formatCutLength(lay.cutLengthMm),
    clockText(lay.clock),
    formatSlack(lay.slack),
    `${formatNumber(lay.minRadius.radiusMm, 1, 'down')} of ${formatNumber(lay.minRadius.limitMm, 1, 'up')} mm`,
    room,
    String(lay.supports.filter((s) => s.proposed).length),
    count('look'),
    count('stop'),
  ];
}
