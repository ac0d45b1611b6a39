import { invariant } from '../../base/invariant.ts';
import { PART_KINDS, type PartKind, type StoredRow } from './columns.ts';
import { completeEnd } from './completeEnd.ts';
import type { EndRow, PartTables } from './schema.ts';

/** One file of the user's part tables with its rows as they stand in it, ends with no more lengths than their row gives. */
export interface PartSheet<K extends PartKind = PartKind> {
  /** As the project names it. */
  readonly path: string;
  readonly kind: K;
  readonly rows: readonly StoredRow[K][];
}

/** All rows of a kind, in the order of the files. */
export function rowsOfKind<K extends PartKind>(sheets: readonly PartSheet[], kind: K): readonly StoredRow[K][] {
  return sheets.flatMap((sheet) => (sheet.kind === kind ? (sheet.rows as readonly StoredRow[K][]) : []));
}

/** The tables that a project names its parts from; ends with all their lengths. Takes rows that `checkRow` passed. */
export function tablesOfSheets(sheets: readonly PartSheet[]): PartTables {
  const rows = PART_KINDS.map((kind) => [
    kind,
    kind === 'ends' ? rowsOfKind(sheets, kind).map(completed) : rowsOfKind(sheets, kind),
  ]);
  return Object.fromEntries(rows) as unknown as PartTables;
}

function completed(row: EndRow): PartTables['ends'][number] {
  const end = completeEnd(row);
  invariant(end !== undefined, `tablesOfSheets: the end ${row.id} passed without its lengths`);
  return end;
}
