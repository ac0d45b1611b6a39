import type { Lay, Rock } from '../../shared/document/lay/schema.ts';
import { leastSlackMm, tightOrder, type WorkedLay, worstExtreme } from '../../shared/document/lay/tightOrder.ts';
import { formatClearance, formatNumber, formatRadius, formatTurn } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = [
  'RUN',
  'GOES TIGHT AT',
  'SLACK LEFT',
  'LEAST RADIUS',
  'LEAST CLEARANCE',
  'TWIST',
  'PULL',
  'LEAST SLACK WITH',
];

/** The hoses that the bodies' motion works, the one that goes tight first on top; nothing where no body moves. */
export function rockTable(lays: readonly Lay[]): string[] {
  const worked = tightOrder(lays);
  if (worked.length === 0) return [];
  const carried = lays.filter((l) => l.rock?.carried === true).map((l) => l.run);
  return [
    '',
    'WHEN BODIES MOVE: worst over all extremes, the hose that goes tight first on top',
    ...inColumns([HEADINGS, ...worked.map(row)]),
    ...(carried.length === 0 ? [] : [`carried along whole, so never tight: ${carried.join(', ')}`]),
  ];
}

function row({ lay, rock }: WorkedLay): string[] {
  const radius = worstExtreme(rock, 'minRadius')?.minRadius?.provenAtLeastMm;
  const clearance = worstExtreme(rock, 'clearance')?.tightest;
  return [
    lay.run,
    tightText(rock),
    formatClearance(leastSlackMm(rock)),
    radius === undefined ? '-' : formatRadius(radius),
    clearance === undefined
      ? '-'
      : `${formatClearance(clearance.clearanceMm)} to ${clearance.to.part ?? clearance.to.id}`,
    turn(worstExtreme(rock, 'twist')?.twistDeg),
    pullText(rock),
    worstExtreme(rock, 'slackLeft')?.pose.name ?? '-',
  ];
}

/** Share of the motion, rounded down: a hose is never said to go tight later than it does. */
function tightText({ tightAt }: Rock): string {
  return tightAt === undefined ? 'not within 200 %' : `${formatNumber(tightAt.share * 100, 0, 'down')} % of motion`;
}

function turn(deg: number | undefined): string {
  return deg === undefined ? '-' : formatTurn(Math.abs(deg), 'up');
}

/** Of an estimated stiffness, so to a newton; a hose that pushes everywhere does not pull. */
function pullText(rock: Rock): string {
  if (rock.extremes.some((e) => e.outcome === 'too-short')) return 'cannot be laid';
  const tension = worstExtreme(rock, 'tension')?.tensionN;
  return tension === undefined || tension <= 0 ? 'none' : `about ${formatNumber(tension, 0, 'up')} N`;
}
