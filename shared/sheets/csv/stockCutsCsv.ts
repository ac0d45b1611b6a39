import papa from 'papaparse';
import type { StockCuts } from '../bench/stockCuts.ts';
import { disarmed } from './disarmed.ts';

/** One row a cut, one for what is left of each piece, and one for each hose that is not cut. */
export const STOCK_CUTS_COLUMNS = [
  'hose',
  'piece',
  'offcut',
  'cure_date',
  'what',
  'run',
  'length_mm',
  'kerf_mm',
  'note',
] as const;
type StockRow = Partial<Record<(typeof STOCK_CUTS_COLUMNS)[number], string>>;

/** The cuts of a job from stock as CSV text, piece by piece in the order of cutting. Lines end in CR LF (RFC 4180). */
export function stockCutsCsv(cuts: StockCuts): string {
  const data = stockRows(cuts).map((row) => STOCK_CUTS_COLUMNS.map((column) => disarmed(row[column] ?? '')));
  return `${papa.unparse({ fields: [...STOCK_CUTS_COLUMNS], data }, { newline: '\r\n' })}\r\n`;
}

/** The rows of the table, for paper and terminal. */
export function stockRows({ hoses, leftOut, kerfMm }: StockCuts): StockRow[] {
  return [
    ...hoses.flatMap(({ hose, plan }) => [
      ...plan.pieces.flatMap(({ piece, cuts, leftMm }) => {
        const from = {
          hose,
          piece: piece.id,
          offcut: piece.offcut === true ? 'yes' : '',
          cure_date: piece.cureDate ?? '',
        };
        const note = plan.proven ? '' : 'not every way was looked at; another may waste less';
        return [
          ...cuts.map(
            ({ run, lengthMm }): StockRow => ({
              ...from,
              what: 'cut',
              run,
              length_mm: lengthMm.toFixed(1),
              kerf_mm: `${kerfMm}`,
            }),
          ),
          { ...from, what: 'left', length_mm: leftMm.toFixed(1), note },
        ];
      }),
      ...plan.notHeld.map(
        ({ run, lengthMm }): StockRow => ({
          hose,
          what: 'NOT HELD',
          run,
          length_mm: lengthMm.toFixed(1),
          note: 'no roll or offcut has that left',
        }),
      ),
    ]),
    ...leftOut.map(({ run, reason }): StockRow => ({ what: 'DO NOT CUT', run, note: reason })),
  ];
}
