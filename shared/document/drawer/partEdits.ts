import { bad, good, type Problem, type Result } from '../../base/result.ts';
import type { PartKind, StoredRow } from '../parts/columns.ts';
import { type PartSheet, rowsOfKind } from '../parts/partSheet.ts';
import { ownSheetPath, type PartDrawer, withSheet } from './partDrawer.ts';
import { partUses } from './partUses.ts';

/** Puts a row in: over the one of its id, where that stands, else at the end of the user's own table of the kind. */
export function putPart<K extends PartKind>(drawer: PartDrawer, kind: K, row: StoredRow[K]): PartDrawer {
  const at = drawer.sheets.find((sheet) => sheet.kind === kind && sheet.rows.some(({ id }) => id === row.id));
  const path = at?.path ?? ownSheetPath(drawer, kind);
  const sheet = (at ?? drawer.sheets.find((one) => one.kind === kind && one.path === path)) as PartSheet<K> | undefined;
  const rows = sheet?.rows ?? [];
  const put = at === undefined ? [...rows, row] : rows.map((old) => (old.id === row.id ? row : old));
  return withSheet(drawer, { path, kind, rows: put });
}

/** Takes a row out; refused while something uses it, and then it is said what. */
export function removePart(drawer: PartDrawer, kind: PartKind, id: string): Result<PartDrawer> {
  const uses = partUses(drawer, kind, id);
  if (uses.length > 0) return bad([inUse(id, uses)]);
  const sheets = drawer.sheets.map((sheet) =>
    sheet.kind === kind ? { ...sheet, rows: sheet.rows.filter((row) => row.id !== id) } : sheet,
  );
  return good({ project: drawer.project, sheets: sheets as readonly PartSheet[] });
}

function inUse(id: string, uses: readonly string[]): Problem {
  return { path: id, message: `in use by ${uses.join(', ')}; choose another part there first` };
}

/** What bringing rows in would do to the table that is there. */
export interface ImportPlan {
  /** ids of rows that are not there yet, that differ, that are the same */
  readonly fresh: readonly string[];
  readonly changed: readonly string[];
  readonly same: readonly string[];
  /** ids that are there and not among the rows: kept by merging, taken out by replacing */
  readonly others: readonly string[];
}

/** Compares rows to bring in with those of their kind; nothing is changed. */
export function planImport<K extends PartKind>(
  { sheets }: PartDrawer,
  kind: K,
  rows: readonly StoredRow[K][],
): ImportPlan {
  const known = new Map(rowsOfKind(sheets, kind).map((row) => [row.id, alike(row)]));
  const coming = new Set(rows.map(({ id }) => id));
  const ids = (of: (row: StoredRow[K]) => boolean): string[] => rows.filter(of).map(({ id }) => id);
  return {
    fresh: ids((row) => !known.has(row.id)),
    changed: ids((row) => known.has(row.id) && known.get(row.id) !== alike(row)),
    same: ids((row) => known.get(row.id) === alike(row)),
    others: [...known.keys()].filter((id) => !coming.has(id)),
  };
}

/** A row as text that is the same for the same figures, in whatever order they were set. */
function alike(row: object): string {
  return JSON.stringify(Object.entries(row).sort(([p], [q]) => (p < q ? -1 : 1)));
}

/** Brings rows in beside those that are there: a row of a known id takes the place of the old one, where that stands. */
export function mergeParts<K extends PartKind>(drawer: PartDrawer, kind: K, rows: readonly StoredRow[K][]): PartDrawer {
  const { fresh, changed } = planImport(drawer, kind, rows);
  const coming = new Set([...fresh, ...changed]);
  return rows.filter(({ id }) => coming.has(id)).reduce<PartDrawer>((into, row) => putPart(into, kind, row), drawer);
}

/**
 * Puts rows in the place of all of their kind, as the user's one table of it. Refused while something uses a part that is
 * not among them, and then every such part is told. The project no longer names the tables that were there; their files stay.
 */
export function replaceParts<K extends PartKind>(
  drawer: PartDrawer,
  kind: K,
  rows: readonly StoredRow[K][],
): Result<PartDrawer> {
  const missed = planImport(drawer, kind, rows).others.flatMap((id) => {
    const uses = partUses(drawer, kind, id);
    return uses.length > 0 ? [inUse(id, uses)] : [];
  });
  if (missed.length > 0) return bad(missed);
  const path = ownSheetPath(drawer, kind);
  const sheets = drawer.sheets.filter((sheet) => sheet.kind !== kind);
  const tables = { ...drawer.project.tables, [kind]: [] };
  return good(withSheet({ project: { ...drawer.project, tables }, sheets }, { path, kind, rows }));
}
