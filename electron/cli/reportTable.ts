import type { Clearance, Clock, Finding, Lay, LayReport, Severity } from '../../shared/document/lay/schema.ts';
import {
  findingNumbers,
  formatDegrees,
  formatInches,
  formatNumber,
  formatSlack,
} from '../../shared/sheets/format/index.ts';

/** A lay report for a person at a terminal: one row of mm and one of inches for each run, then the findings. */
export function reportTable(report: LayReport): string {
  const { project, lays, findings } = report;
  const heading = [project.name, ...(project.exampleData ? ['EXAMPLE DATA: invented, not for cutting hose'] : [])];
  return [
    ...heading,
    '',
    ...inColumns([HEADINGS, ...lays.flatMap(runRows)]),
    ...lays.flatMap(reasonLine),
    '',
    ...findingLines(findings),
    '',
  ].join('\n');
}

const HEADINGS = ['RUN', 'OUTCOME', 'CUT', 'OVERALL', 'CLOCK', 'SLACK', 'LEAST RADIUS', 'TIGHTEST CLEARANCE'];

function runRows(lay: Lay): string[][] {
  if (lay.outcome === 'no-way') return [[lay.run, lay.outcome]];
  const { minRadius } = lay;
  const nearest = tightest(lay.clearances);
  return [
    [
      lay.run,
      lay.outcome,
      mm(lay.cutLengthMm, 'up'),
      mm(lay.overallLengthMm, 'up'),
      clockText(lay.clock),
      formatSlack(lay.slack),
      `${mm(minRadius.radiusMm, 'down')} of ${mm(minRadius.limitMm, 'up')}`,
      nearest === undefined ? 'nothing near' : clearanceText(nearest, (value, rounding) => mm(value, rounding)),
    ],
    [
      '',
      '',
      formatInches(lay.cutLengthMm, 'up'),
      formatInches(lay.overallLengthMm, 'up'),
      '',
      '',
      `${formatInches(minRadius.radiusMm, 'down')} of ${formatInches(minRadius.limitMm, 'up')}`,
      nearest === undefined ? '' : clearanceText(nearest, (value, rounding) => formatInches(value, rounding, 32)),
    ],
  ];
}

type Written = (valueMm: number, rounding: 'up' | 'down') => string;

const mm: Written = (valueMm, rounding) => `${formatNumber(valueMm, 1, rounding)} mm`;

/** The clearance with the least room to its own requirement, which is not always the smallest one. */
function tightest(clearances: readonly Clearance[]): Clearance | undefined {
  const room = (c: Clearance) => c.clearanceMm - c.requiredMm;
  return clearances.reduce<Clearance | undefined>(
    (least, one) => (least === undefined || room(one) < room(least) ? one : least),
    undefined,
  );
}

function clearanceText({ clearanceMm, requiredMm, to }: Clearance, written: Written): string {
  const thing = to.part === undefined ? `${to.kind} ${to.id}` : `${to.part} (${to.id})`;
  return `${written(clearanceMm, 'down')} of ${written(requiredMm, 'up')} to ${thing}`;
}

function clockText(clock: Clock): string {
  if (clock.kind === 'free') return 'free';
  return `${formatDegrees(clock.deg)} ± ${formatDegrees(clock.toleranceDeg)}`;
}

function reasonLine(lay: Lay): string[] {
  return lay.reason === undefined ? [] : [`${lay.run}: ${lay.reason}`];
}

const SEVERITY_ORDER: readonly Severity[] = ['stop', 'look', 'note'];

function findingLines(findings: readonly Finding[]): string[] {
  if (findings.length === 0) return ['No findings.'];
  const rank = (finding: Finding) => SEVERITY_ORDER.indexOf(finding.severity);
  const sorted = findings.toSorted((a, b) => rank(a) - rank(b));
  return ['FINDINGS', ...sorted.flatMap(findingText)];
}

function findingText(finding: Finding): string[] {
  const { limit, measured, margin } = findingNumbers(finding);
  const place = finding.at === undefined ? '' : ` at ${mm(finding.at.arcLengthMm, 'down')} from END A`;
  return [
    `${finding.severity.toUpperCase().padEnd(5)} ${finding.run}: ${finding.message}${place}`,
    `      measured ${measured}, limit ${limit}, margin ${margin} [${finding.rule}; ${finding.source}]`,
    ...(finding.dissent === undefined ? [] : [`      others say: ${finding.dissent}`]),
    ...(finding.mend === undefined ? [] : [`      mend: ${finding.mend}`]),
    ...(finding.overrideReason === undefined ? [] : [`      overridden: ${finding.overrideReason}`]),
  ];
}

/** Rows of text padded to even columns, two spaces apart. */
function inColumns(rows: readonly (readonly string[])[]): string[] {
  const widths = HEADINGS.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
