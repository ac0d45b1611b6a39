import papa from 'papaparse';
import { type Column, columnsOf, type PartKind, type StoredRow } from './columns.ts';

/**
 * A part table as the text of its file: the columns of its kind in the schema's order, less those that may be left out
 * and that no row uses; commas, `\n`, numbers with a decimal point and every digit, yes or no. `parsePartTables` reads
 * back equal rows.
 */
export function partTableCsv<K extends PartKind>(kind: K, rows: readonly StoredRow[K][]): string {
  return tableCsv(columnsOf(kind), rows);
}

/** A table of any columns, written the same way. */
export function tableCsv(known: readonly Column[], rows: readonly object[]): string {
  const byKey = rows.map((row) => new Map<string, unknown>(Object.entries(row)));
  const columns = known.filter(({ key, optional }) => !optional || byKey.some((row) => row.get(key) !== undefined));
  const data = byKey.map((row) => columns.map(({ key }) => cellText(row.get(key))));
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
