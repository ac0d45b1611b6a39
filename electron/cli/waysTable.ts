import type { WayRound, WaysRound } from '../../shared/document/waysRound/schema.ts';
import { formatCutLength, formatNumber, formatSlack } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';
import { clockText, tightest } from './reportTable.ts';

const HEADINGS = ['WAY', 'CUT', 'CLOCK', 'SLACK', 'LEAST RADIUS', 'NEAREST', 'CLAMPS', 'LOOKS', 'STOPS', 'WAYPOINT'];

/** The ways of a run round things for a person at a terminal, best first; each with the waypoint that keeps the run on it. */
export function waysTable({ run, ways }: WaysRound): string {
  if (ways.length === 0) return `${run}: no way was found\n`;
  const found = `${run}: ${ways.length} ${ways.length === 1 ? 'way' : 'ways'} found`;
  return [found, '', ...inColumns([HEADINGS, ...ways.map(rowOf)]), ''].join('\n');
}

function rowOf({ lay, findings, waypoint }: WayRound, i: number): string[] {
  const near = tightest(lay.clearances);
  const count = (severity: string): string => String(findings.filter((f) => f.severity === severity).length);
  return [
    `${i + 1}${lay.outcome === 'laid' ? '' : ' (near miss)'}`,
    formatCutLength(lay.cutLengthMm),
    clockText(lay.clock),
    formatSlack(lay.slack),
    `${formatNumber(lay.minRadius.radiusMm, 1, 'down')} of ${formatNumber(lay.minRadius.limitMm, 1, 'up')} mm`,
    near === undefined
      ? 'nothing near'
      : `${formatNumber(near.clearanceMm, 1, 'down')} mm to ${near.to.part ?? near.to.id}`,
    String(lay.supports.filter((s) => s.proposed).length),
    count('look'),
    count('stop'),
    waypoint === undefined ? '' : waypoint.map((v) => v.toFixed(0)).join(', '),
  ];
}
