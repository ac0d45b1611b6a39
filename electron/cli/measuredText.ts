import type { MeasureCheck, MeasuredEnd } from '../../shared/document/parts/measure/measureEnd.ts';
import { type MeasureKind, READINGS } from '../../shared/document/parts/measure/readings.ts';
import { formatDegrees, formatLengthBoth } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

/** What to read off a kind of end. */
export function readingsText(kind: MeasureKind): string {
  const rows = READINGS[kind].map(({ letter, words, need }) => [letter, need === 'check' ? 'to check' : '', words]);
  return `${inColumns(rows).join('\n')}\n`;
}

/** What readings come to, what holds and what does not, and which to take again. */
export function measuredText(kind: MeasureKind, { missing, end, checks, again }: MeasuredEnd): string {
  const letters = (keys: readonly string[]): string =>
    READINGS[kind]
      .filter(({ key }) => keys.includes(key))
      .map(({ letter, words }) => `${letter} (${words})`)
      .join(', ');
  if (end === undefined) return `still to be read: ${letters(missing)}\n`;
  const length = (mm: number): string => formatLengthBoth(mm, 'nearest', 32);
  const figures = [
    ['bend', formatDegrees(end.bendAngleDeg)],
    ['C', length(end.cutOffMm)],
    ['drop', length(end.dropMm)],
    ['seat to bend', length(end.seatToBendMm)],
    ['bend to shoulder', length(end.bendToShoulderMm)],
  ];
  return [
    ...inColumns(figures),
    ...checks.map(checkLine),
    ...(again.length === 0 ? [] : [`take again: ${letters(again)}`]),
    '',
  ].join('\n');
}

function checkLine({ what, unit, from, figures, agrees }: MeasureCheck): string {
  const text = (figure: number): string => (unit === 'deg' ? formatDegrees(figure) : formatLengthBoth(figure));
  return `${agrees ? 'holds' : 'DOES NOT HOLD'}: ${what}: ${from[0]} ${text(figures[0])}, ${from[1]} ${text(figures[1])}`;
}
