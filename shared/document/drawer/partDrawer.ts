import { PART_KINDS, type PartKind } from '../parts/columns.ts';
import type { PartFile } from '../parts/parsePartTables.ts';
import type { PartSheet } from '../parts/partSheet.ts';
import { partTableCsv } from '../parts/partTableCsv.ts';
import type { NamedFile } from '../project/projectFiles.ts';
import type { Project } from '../project/schema.ts';

/** A project with the tables that its parts are in: what an edit of the parts changes, both at once. */
export interface PartDrawer {
  readonly project: Project;
  readonly sheets: readonly PartSheet[];
}

/** The tables that a project names, with their texts out of its files; one that is not among them is left out. */
export function partFilesOf(project: Project, files: readonly NamedFile[]): PartFile[] {
  const decoder = new TextDecoder();
  const byPath = new Map(files.map((file) => [file.path, file.bytes]));
  return PART_KINDS.flatMap((kind) =>
    (project.tables[kind] ?? []).flatMap((path) => {
      const bytes = byPath.get(path);
      return bytes === undefined ? [] : [{ path, kind, text: decoder.decode(bytes) }];
    }),
  );
}

/** A table as its file. */
export function sheetFile(sheet: PartSheet): NamedFile {
  return { path: sheet.path, bytes: new TextEncoder().encode(partTableCsv<PartKind>(sheet.kind, sheet.rows)) };
}

/** Words in a file's name that say its rows are not the user's own. */
const NOT_OWN = /example|published/;

/**
 * Where own rows of a kind go: the project's first table of the kind that is neither example nor published data by its
 * name, else a new one beside its hose tables.
 */
export function ownSheetPath({ project, sheets }: PartDrawer, kind: PartKind): string {
  const own = (project.tables[kind] ?? []).find((path) => !NOT_OWN.test(path));
  if (own !== undefined) return own;
  const beside = project.tables.hoses[0] ?? '';
  const folder = beside.slice(0, beside.lastIndexOf('/') + 1);
  const taken = new Set(sheets.map(({ path }) => path));
  const named = (n: number): string => `${folder}own-${kind}${n === 1 ? '' : `-${n}`}.csv`;
  let n = 1;
  while (taken.has(named(n))) n++;
  return named(n);
}

/** The drawer with the rows of one table changed; a table that is not there yet is made and named in the project. */
export function withSheet<K extends PartKind>(drawer: PartDrawer, sheet: PartSheet<K>): PartDrawer {
  const changed = sheet as PartSheet;
  if (drawer.sheets.some(({ path, kind }) => path === sheet.path && kind === sheet.kind))
    return {
      project: drawer.project,
      sheets: drawer.sheets.map((old) => (old.path === sheet.path && old.kind === sheet.kind ? changed : old)),
    };
  const { project } = drawer;
  const tables = { ...project.tables, [sheet.kind]: [...(project.tables[sheet.kind] ?? []), sheet.path] };
  return { project: { ...project, tables }, sheets: [...drawer.sheets, changed] };
}
