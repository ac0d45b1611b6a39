import papa from 'papaparse';
import { columnsOf, type PartKind, type StoredRow } from './columns.ts';

/**
 * A part table as the text of its file: the columns of its kind in the schema's order, less those that may be left out
 * and that no row uses; commas, `\n`, numbers with a decimal point and every digit, yes or no. `parsePartTables` reads
 * back equal rows.
 */
export function partTableCsv<K extends PartKind>(kind: K, rows: readonly StoredRow[K][]): string {
  const uses = (key: string): boolean =>
    rows.some((row) => (row as unknown as Record<string, unknown>)[key] !== undefined);
  const columns = columnsOf(kind).filter((column) => !column.optional || uses(column.key));
  const data = rows.map((row) => columns.map((c) => cellText((row as unknown as Record<string, unknown>)[c.key])));
  return `${papa.unparse({ fields: columns.map((c) => c.heading), data }, { newline: '\n' })}\n`;
}

/** A value as its cell reads; nothing for a value that is not there. */
export function cellText(value: unknown): string {
  if (value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value))
    return value.map((entry) => (Array.isArray(entry) ? entry.join(':') : String(entry))).join(' ');
  return String(value);
}
