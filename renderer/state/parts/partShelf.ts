import { type PartDrawer, sheetFile } from '../../../shared/document/drawer/partDrawer.ts';
import { type PartSheet, tablesOfSheets } from '../../../shared/document/parts/partSheet.ts';
import type { PartTables } from '../../../shared/document/parts/schema.ts';
import type { NamedFile } from '../../../shared/document/project/projectFiles.ts';
import type { Project } from '../../../shared/document/project/schema.ts';

/**
 * The part tables that go with each state of the project. An edit of a part is a new state of the project, so that undo,
 * stale runs and saving need know of one history only. A table that was not edited keeps its file byte for byte.
 */
export interface PartShelf {
  sheetsOf(project: Project): readonly PartSheet[];
  /** the parts of a state of the project, as what an edit starts from */
  drawerOf(project: Project): PartDrawer;
  /** Lays down which tables go with a state. */
  put(project: Project, sheets: readonly PartSheet[]): void;
  tablesOf(project: Project): PartTables;
  /** Everything that lies beside the project's own file. */
  filesOf(project: Project): readonly NamedFile[];
  /** The files of the tables alone. */
  tableFilesOf(project: Project): readonly NamedFile[];
}

/** A shelf for a project as it was opened, with its tables as read and all its files. */
export function createPartShelf(opened: Project, read: readonly PartSheet[], files: readonly NamedFile[]): PartShelf {
  const sheetsByState = new WeakMap<Project, readonly PartSheet[]>([[opened, read]]);
  const tablesBySheets = new WeakMap<readonly PartSheet[], PartTables>();
  const fileBySheet = new WeakMap<PartSheet, NamedFile>();
  const tablePaths = new Set(read.map(({ path }) => path));
  const others = files.filter(({ path }) => !tablePaths.has(path));
  for (const sheet of read) {
    const file = files.find(({ path }) => path === sheet.path);
    if (file !== undefined) fileBySheet.set(sheet, file);
  }
  const sheetsOf = (project: Project): readonly PartSheet[] => sheetsByState.get(project) ?? read;
  const fileOf = (sheet: PartSheet): NamedFile => {
    const file = fileBySheet.get(sheet) ?? sheetFile(sheet);
    fileBySheet.set(sheet, file);
    return file;
  };
  const tableFilesOf = (project: Project): readonly NamedFile[] => sheetsOf(project).map(fileOf);
  return {
    sheetsOf,
    tableFilesOf,
    drawerOf: (project) => ({ project, sheets: sheetsOf(project) }),
    put: (project, sheets) => void sheetsByState.set(project, sheets),
    tablesOf: (project) => {
      const sheets = sheetsOf(project);
      const tables = tablesBySheets.get(sheets) ?? tablesOfSheets(sheets);
      tablesBySheets.set(sheets, tables);
      return tables;
    },
    filesOf: (project) => [...others, ...tableFilesOf(project)],
  };
}

/** Which tables must be written for a state, against the files that are on disk: new ones, and those that differ. */
export function tablesToWrite(
  tables: readonly NamedFile[],
  onDisk: readonly NamedFile[],
): { readonly added: readonly NamedFile[]; readonly changed: readonly NamedFile[] } {
  const standing = new Map(onDisk.map((file) => [file.path, file.bytes]));
  return {
    added: tables.filter(({ path }) => !standing.has(path)),
    changed: tables.filter(({ path, bytes }) => standing.has(path) && standing.get(path) !== bytes),
  };
}
