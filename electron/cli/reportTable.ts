import type { Clearance, Clock, Finding, Lay, LayReport, Severity } from '../../shared/document/lay/schema.ts';
import {
  findingNumbers,
  formatDegrees,
  formatInches,
  formatNumber,
  formatSlack,
  isStraight,
  isYesOrNo,
} from '../../shared/sheets/format/index.ts';
import { adapterTable, taperTable } from './adapterTable.ts';
import { flowTable } from './flowTable.ts';
import { handsTable } from './handsTable.ts';
import { heatTable } from './heatTable.ts';
import { inColumns } from './inColumns.ts';
import { lengthTable } from './lengthTable.ts';
import { rockTable } from './rockTable.ts';

/** A lay report for a person at a terminal: one row of mm and one of inches for each run, then the findings. */
export function reportTable(report: LayReport): string {
  const { project, lays, findings } = report;
  const heading = [project.name, ...(project.exampleData ? ['EXAMPLE DATA: invented, not for cutting hose'] : [])];
  return [
    ...heading,
    '',
    ...inColumns([HEADINGS, ...lays.flatMap(runRows)]),
    ...lays.flatMap(reasonLine),
    ...lengthTable(lays),
    ...adapterTable(lays),
    ...flowTable(lays),
    ...heatTable(lays),
    ...handsTable(lays),
    ...rockTable(lays),
    ...taperTable(lays),
    ...warningLines(report.warnings ?? []),
    '',
    ...findingLines(findings),
    '',
  ].join('\n');
}

/** What to look at in the input, before the findings: a lay in a bay of the wrong unit is no answer. */
function warningLines(warnings: readonly string[]): string[] {
  return warnings.length === 0 ? [] : ['', 'LOOK AT THE INPUT', ...warnings];
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
      `${radius(minRadius.radiusMm, mm)} of ${mm(minRadius.limitMm, 'up')}`,
      nearest === undefined ? 'nothing near' : clearanceText(nearest, (value, rounding) => mm(value, rounding)),
    ],
    [
      '',
      '',
      formatInches(lay.cutLengthMm, 'up'),
      formatInches(lay.overallLengthMm, 'up'),
      '',
      '',
      `${radius(minRadius.radiusMm, formatInches)} of ${formatInches(minRadius.limitMm, 'up')}`,
      nearest === undefined ? '' : clearanceText(nearest, (value, rounding) => formatInches(value, rounding, 32)),
    ],
  ];
}

/** The least radius; a hose that does not bend has none. */
function radius(valueMm: number, written: Written): string {
  return isStraight(valueMm) ? 'straight' : written(valueMm, 'down');
}

type Written = (valueMm: number, rounding: 'up' | 'down') => string;

const mm: Written = (valueMm, rounding) => `${formatNumber(valueMm, 1, rounding)} mm`;

/** The clearance with the least room to its own requirement, which is not always the smallest one. */
export function tightest(clearances: readonly Clearance[]): Clearance | undefined {
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

export function clockText(clock: Clock): string {
  if (clock.kind === 'free') return 'free';
  return `${formatDegrees(clock.deg)} ± ${formatDegrees(clock.toleranceDeg)}`;
}

function reasonLine(lay: Lay): string[] {
  const told = [...(lay.reason === undefined ? [] : [lay.reason]), ...(lay.givenUp ?? []).map((g) => g.reason)];
  return told.map((reason) => `${lay.run}: ${reason}`);
}

const SEVERITY_ORDER: readonly Severity[] = ['stop', 'look', 'note'];

/** Where arc length begins, as messages say it. */
const FROM_SHOULDER = 'from shoulder A';

function findingLines(findings: readonly Finding[]): string[] {
  if (findings.length === 0) return ['No findings.'];
  const rank = (finding: Finding) => SEVERITY_ORDER.indexOf(finding.severity);
  const sorted = findings.toSorted((a, b) => rank(a) - rank(b));
  return ['FINDINGS', ...sorted.flatMap(findingText)];
}

function findingText(finding: Finding): string[] {
  const { limit, measured, margin } = findingNumbers(finding);
  const told = finding.at === undefined || finding.message.includes(FROM_SHOULDER);
  const place = told ? '' : ` (${mm(finding.at?.arcLengthMm ?? 0, 'down')} ${FROM_SHOULDER})`;
  // Whether a thing is so is no figure: its message says all.
  const figures = isYesOrNo(finding) ? '' : `measured ${measured}, limit ${limit}, margin ${margin} `;
  return [
    `${finding.severity.toUpperCase().padEnd(5)} ${finding.run}: ${finding.message}${place}`,
    `      ${figures}[${finding.rule}; ${finding.source}]`,
    ...(finding.dissent === undefined ? [] : [`      others say: ${finding.dissent}`]),
    ...(finding.mend === undefined ? [] : [`      mend: ${finding.mend}`]),
    ...(finding.overrideReason === undefined ? [] : [`      overridden: ${finding.overrideReason}`]),
  ];
}
