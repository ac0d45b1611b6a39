import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { bad, good, type Problem, type Result } from '../../../shared/base/result.ts';
import { type PartDrawer, partFilesOf, sheetFile } from '../../../shared/document/drawer/partDrawer.ts';
import { mergeParts, planImport, replaceParts } from '../../../shared/document/drawer/partEdits.ts';
import { PART_KINDS, type PartKind, type StoredRow } from '../../../shared/document/parts/columns.ts';
import { type PartFile, readPartSheets } from '../../../shared/document/parts/parsePartTables.ts';
import { type PartSheet, rowsOfKind, tablesOfSheets } from '../../../shared/document/parts/partSheet.ts';
import { partTableCsv } from '../../../shared/document/parts/partTableCsv.ts';
import { namedPaths } from '../../../shared/document/project/namedPaths.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { resolveProject } from '../../../shared/document/project/resolve.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import { type ProjectOnDisk, readProjectFiles } from '../../node/readProjectFiles.ts';
import { saveProject } from '../../node/saveProject.ts';
import { writeFilesInto } from '../../node/writeFilesInto.ts';
import { defineCommand, type Values } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { partsTable } from '../partsTable.ts';

interface PartsOptions {
  /** absent = only a file is looked at */
  readonly project?: string;
  readonly kind?: PartKind;
  readonly check?: string;
  readonly from?: string;
  readonly replace: boolean;
  readonly export?: string;
  readonly json: boolean;
}

const OPTIONS = {
  kind: { type: 'string' },
  check: { type: 'string' },
  import: { type: 'string' },
  replace: { type: 'boolean' },
  export: { type: 'string' },
  json: { type: 'boolean' },
} as const;

/** `hosewright parts`: the user's part tables, listed, checked, brought in and written out. */
export const partsCommand = defineCommand({
  name: 'parts',
  usage: [
    [
      'parts  PROJECT [--kind KIND] [--export DIR] [--json]',
      'list the part tables and what uses each part, or say every problem in them;',
      '--export writes one clean CSV a kind. KIND is hoses, ends, sleeves, adapters,',
      'clamps or rolls',
    ],
    ['parts  --check FILE.csv --kind KIND', 'say every problem in one table, which need be in no project'],
    [
      'parts  PROJECT --import FILE.csv --kind KIND [--replace]',
      'bring the rows of a table into the project: beside those there, a row of a known',
      'id in its place; with --replace instead of all of the kind',
    ],
  ],
  options: OPTIONS,
  words: [0, 1],
  read: readOptions,
  run: runParts,
});

function readOptions([project]: readonly string[], values: Values<typeof OPTIONS>): Result<PartsOptions> {
  const problems: Problem[] = [];
  const { kind: named, check, import: from, export: into, replace = false, json = false } = values;
  const kind = PART_KINDS.find((known) => known === named);
  if (named !== undefined && kind === undefined)
    problems.push({ path: '--kind', message: `expected one of ${PART_KINDS.join(', ')}`, got: JSON.stringify(named) });
  if (named === undefined && (check !== undefined || from !== undefined))
    problems.push({ path: '--kind', message: `expected what the table holds: ${PART_KINDS.join(', ')}` });
  if (project === undefined && check === undefined)
    problems.push({ path: 'parts', message: 'expected a project file or its folder, or --check FILE.csv' });
  if (check !== undefined && (project ?? from ?? into) !== undefined)
    problems.push({ path: '--check', message: 'looks at one file alone, without a project and without other work' });
  if (replace && from === undefined) problems.push({ path: '--replace', message: 'goes with --import FILE.csv' });
  if (problems.length > 0) return bad(problems);
  return good({
    replace,
    json,
    ...(project === undefined ? {} : { project }),
    ...(kind === undefined ? {} : { kind }),
    ...(check === undefined ? {} : { check }),
    ...(from === undefined ? {} : { from }),
    ...(into === undefined ? {} : { export: into }),
  });
}

async function runParts(options: PartsOptions, host: CommandHost): Promise<ExitCode> {
  const { project, kind, check, from } = options;
  if (check !== undefined && kind !== undefined) return runCheckTable(check, kind, host);
  const read = await readProjectFiles(project ?? '');
  if (!read.ok) return reportProblems(host, read.problems);
  const drawer = drawerOf(read.value);
  if (!drawer.ok) return reportProblems(host, drawer.problems);
  if (from !== undefined && kind !== undefined) return runImport(drawer.value, read.value, from, kind, options, host);
  if (options.export !== undefined) return runExport(drawer.value, options.export, kinds(kind), host);
  if (options.json) {
    const tables = tablesOfSheets(drawer.value.sheets);
    const wanted = Object.fromEntries(kinds(kind).map((one) => [one, tables[one]]));
    host.out(`${JSON.stringify(wanted, null, 2)}\n`);
  } else host.out(partsTable(drawer.value, kinds(kind)));
  return EXIT.clean;
}

function kinds(kind: PartKind | undefined): readonly PartKind[] {
  return kind === undefined ? PART_KINDS : [kind];
}

/** The project and its tables, or all that is wrong with either and with how they go together. */
function drawerOf({ projectText, files }: ProjectOnDisk): Result<PartDrawer> {
  const project = parseProject(projectText);
  const partFiles = project.ok ? partFilesOf(project.value, files) : tablesByPlace(projectText, files);
  const sheets = readPartSheets(partFiles);
  if (!project.ok || !sheets.ok)
    return bad([...(project.ok ? [] : project.problems), ...(sheets.ok ? [] : sheets.problems)]);
  const resolved = resolveProject(project.value, tablesOfSheets(sheets.value));
  return resolved.ok ? good({ project: project.value, sheets: sheets.value }) : bad(resolved.problems);
}

/** Tables of a text that is no sound project, by where it names them, so that their problems are told with its own. */
function tablesByPlace(projectText: string, files: ProjectOnDisk['files']): PartFile[] {
  return namedPaths(projectText).flatMap(({ where, path: name }) => {
    const kind = PART_KINDS.find((one) => where.startsWith(`tables.${one}[`));
    const file = files.find((one) => one.path === name);
    return kind === undefined || file === undefined
      ? []
      : [{ path: name, kind, text: new TextDecoder().decode(file.bytes) }];
  });
}

async function readTable(file: string, kind: PartKind): Promise<Result<readonly StoredRow[PartKind][]>> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return bad([{ path: file, message: 'the file cannot be read' }]);
  }
  const sheets = readPartSheets([{ path: path.basename(file), kind, text }]);
  return sheets.ok ? good(rowsOfKind(sheets.value, kind)) : sheets;
}

async function runCheckTable(file: string, kind: PartKind, host: CommandHost): Promise<ExitCode> {
  const rows = await readTable(file, kind);
  if (!rows.ok) return reportProblems(host, rows.problems);
  host.out(`${path.basename(file)}: ${counted(rows.value.length, kind)}, no problem\n`);
  return EXIT.clean;
}

function counted(count: number, kind: PartKind): string {
  const { one, many } = PART_KIND_WORDS[kind];
  return `${count} ${count === 1 ? one : many}`;
}

async function runExport(
  { sheets }: PartDrawer,
  folder: string,
  wanted: readonly PartKind[],
  host: CommandHost,
): Promise<ExitCode> {
  const files = wanted
    .map((kind) => ({ kind, rows: rowsOfKind(sheets, kind) }))
    .filter(({ rows }) => rows.length > 0)
    .map(({ kind, rows }) => ({ path: `${kind}.csv`, bytes: new TextEncoder().encode(partTableCsv(kind, rows)) }));
  const written = await writeFilesInto(folder, files);
  if (!written.ok) return reportProblems(host, written.problems);
  host.out(written.value.map((name) => `${path.join(folder, name)}\n`).join(''));
  return EXIT.clean;
}

async function runImport(
  drawer: PartDrawer,
  disk: ProjectOnDisk,
  file: string,
  kind: PartKind,
  { replace }: PartsOptions,
  host: CommandHost,
): Promise<ExitCode> {
  const rows = await readTable(file, kind);
  if (!rows.ok) return reportProblems(host, rows.problems);
  const { fresh, changed, same, others } = planImport(drawer, kind, rows.value);
  const done = replace ? replaceParts(drawer, kind, rows.value) : good(mergeParts(drawer, kind, rows.value));
  if (!done.ok) return reportProblems(host, done.problems);
  const standing = new Set(disk.files.map((one) => one.path));
  const written = changedSheets(drawer, done.value).map(sheetFile);
  const saved = await saveProject(
    disk.file,
    done.value.project === drawer.project ? disk.projectText : serialiseProject(done.value.project),
    written.filter((one) => !standing.has(one.path)),
    written.filter((one) => standing.has(one.path)),
  );
  if (!saved.ok) return reportProblems(host, saved.problems);
  const left = replace ? `${others.length} taken out` : `${others.length} others kept`;
  host.out(
    `${counted(rows.value.length, kind)}: ${fresh.length} new, ${changed.length} changed, ${same.length} as here; ${left}\n`,
  );
  host.out(written.map((one) => `${path.join(disk.folder, one.path)}\n`).join(''));
  return EXIT.clean;
}

function changedSheets(before: PartDrawer, after: PartDrawer): readonly PartSheet[] {
  return after.sheets.filter((sheet) => !before.sheets.includes(sheet));
}
