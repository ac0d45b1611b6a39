import type { HandShape } from '../../shared/document/hand/handChange.ts';
import { formatCutLength, formatNumber } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';
import { clockText } from './reportTable.ts';

/** A run in the hand for a person at a terminal: a line for each figure. Nothing here is to cut by: lay the run first. */
export function handTable(shape: HandShape): string {
  const { hold, tightest, minRadius } = shape;
  const one = (mm: number, way: 'up' | 'down'): string => `${formatNumber(mm, 1, way)} mm`;
  const rows = [
    ['outcome', shape.outcome],
    ...(shape.reason === undefined ? [] : [['reason', shape.reason]]),
    ['cut', formatCutLength(shape.cutLengthMm)],
    ['clock', clockText(shape.clock)],
    ['least radius', `${one(minRadius.radiusMm, 'down')} of ${one(minRadius.limitMm, 'up')}`],
    [
      'tightest',
      tightest === undefined
        ? 'nothing near'
        : `${one(tightest.clearanceMm, 'down')} of ${one(tightest.requiredMm, 'up')} to ${tightest.to.part ?? tightest.to.id}`,
    ],
    ...(hold === undefined
      ? []
      : [
          ['held at', `${one(hold.arcLengthMm, 'down')} from shoulder A, ${one(hold.offMm, 'up')} off the hand`],
          ['axis there', hold.axis.map((v) => v.toFixed(4)).join(',')],
        ]),
  ];
  return [`${shape.run}: in the hand, not laid`, '', ...inColumns(rows), ''].join('\n');
}
