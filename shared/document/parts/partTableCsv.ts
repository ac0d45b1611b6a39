import papa from 'papaparse';
import { columnsOf, type PartKind, type RowOf } from './columns.ts';

/**
 * A part table as the text of its file: all columns of its kind in the schema's order, commas, `\n`, numbers with a
 * decimal point and every digit, yes or no. `parsePartTables` reads back equal rows.
 */
export function partTableCsv<K extends PartKind>(kind: K, rows: readonly RowOf[K][]): string {
  const columns = columnsOf(kind);
  const data = rows.map((row) => columns.map((c) => cellText((row as unknown as Record<string, unknown>)[c.key])));
  return `${papa.unparse({ fields: columns.map((c) => c.heading), data }, { newline: '\n' })}\n`;
}

function cellText(value: unknown): string {
  if (value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}
