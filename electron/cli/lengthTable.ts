import { type MeasuredLength, sameMeasure } from '../../shared/document/lay/sameMeasure.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { formatInches, formatNumber } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = ['RUN', 'LENGTH', 'MM', 'INCHES', 'A ADDS', 'B ADDS', 'MEASURED'];

/** The lengths of the runs in every convention that applies to their ends, and the sleeves on them. */
export function lengthTable(lays: readonly Lay[]): string[] {
  const laid = lays.filter((lay) => lay.outcome !== 'no-way' && lay.lengths !== undefined);
  if (laid.length === 0) return [];
  return ['', ...inColumns([HEADINGS, ...laid.flatMap(layRows)])];
}

function layRows(lay: Lay): string[][] {
  return [
    ...sameMeasure(lay.lengths ?? []).map((length, i) => lengthRow(length, i === 0 ? lay.run : '')),
    ...sleeveRow(lay),
  ];
}

function lengthRow(length: MeasuredLength, run: string): string[] {
  const { lengthMm, addedMm, missing, from, to, convention, names } = length;
  const name = names.join(' = ').toLowerCase();
  if (lengthMm === undefined)
    return [run, name, '', '', '', '', `not known: the table of ends lacks ${(missing ?? []).join(', and ')}`];
  const rounding = convention === 'shoulder-to-shoulder' ? 'up' : 'nearest';
  return [
    run,
    name,
    formatNumber(lengthMm, 1, rounding),
    formatInches(lengthMm, rounding),
    formatNumber(addedMm?.a ?? 0, 1),
    formatNumber(addedMm?.b ?? 0, 1),
    `${from} to ${to}${(length.notes ?? []).map((note) => `; ${note}`).join('')}`,
  ];
}

function sleeveRow({ sleeve }: Lay): string[][] {
  if (sleeve === undefined) return [];
  const { cutLengthMm, stiffMm, turnedDeg } = sleeve;
  return [
    [
      '',
      'sleeve, at least',
      formatNumber(cutLengthMm, 1, 'up'),
      formatInches(cutLengthMm, 'up'),
      '',
      '',
      `estimate, with ${formatNumber(turnedDeg, 0)} degrees of bends; ${formatNumber(stiffMm, 1, 'up')} mm if its wall does not stretch`,
    ],
  ];
}
