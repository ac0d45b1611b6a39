import { formatDash, formatMm, formatTurn } from '../format/index.ts';
import type { SheetEnd } from '../input.ts';
import { type Block, stack } from '../layout/block.ts';
import { tableRows } from '../layout/table.ts';
import { heading } from '../layout/textBlock.ts';
import type { Subject } from './subject.ts';

/** What a run without a lay asks for: its hose and its ends, so that the page names what would have to change. */
export function askedTable({ paper, run, widthMm }: Subject): Block {
  const columns = [
    { title: '', widthMm: 26, bold: true },
    { title: 'asked for', widthMm: widthMm - 26 },
  ];
  const { hose, sleeve } = run;
  const datum = hose.minBendRadiusDatum === 'inside' ? 'to the inside of the bend' : 'to the centreline';
  const rows = [
    [
      'HOSE',
      `${hose.name}, ${formatDash(hose.dash)} (${hose.id}); bends to ${formatMm(hose.minBendRadiusMm, 'up')} ${datum}`,
    ],
    ...(sleeve ? [['SLEEVE', `${sleeve.name} (${sleeve.id}); ${formatMm(sleeve.outsideDiameterMm)} outside`]] : []),
    ['END A', endText(run.a)],
    ['END B', endText(run.b)],
  ];
  const table = tableRows(paper, columns, rows);
  return stack([heading('What was asked for', widthMm), table.titles, ...table.rows]);
}

function endText({ port, end }: SheetEnd): string {
  const bend = end.bendAngleDeg === 0 ? 'straight' : formatTurn(end.bendAngleDeg);
  return `${port.name} (${port.id}): ${end.name} (${end.id}), ${bend}`;
}
