import papa from 'papaparse';
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { shortJson } from '../problems/shortJson.ts';
import { checkRow } from './checkRow.ts';
import { type Column, columnsOf, headingOf, type PartKind, type StoredRow } from './columns.ts';
import { type PartSheet, tablesOfSheets } from './partSheet.ts';
import { readCell } from './readCell.ts';
import type { PartTables } from './schema.ts';

/** A part table as it stands on disk. */
export interface PartFile {
  /** As the project names it; shown in problems. */
  readonly path: string;
  readonly kind: PartKind;
  readonly text: string;
}

/**
 * Reads the user's part tables: CSV with one heading row, cells separated by commas, semicolons or tabs (whichever the
 * heading row uses), numbers with a decimal point. Answers all rows of all files, or all problems, each with file, row as
 * a spreadsheet numbers it (heading = row 1) and column. Blank rows are passed over.
 */
export function parsePartTables(files: readonly PartFile[]): Result<PartTables> {
  const sheets = readPartSheets(files);
  return sheets.ok ? good(tablesOfSheets(sheets.value)) : sheets;
}

/** As `parsePartTables`, file by file, each with its rows as it has them. */
export function readPartSheets(files: readonly PartFile[]): Result<readonly PartSheet[]> {
  const problems: Problem[] = [];
  const takenBy = new Map<string, string>();
  const sheets = files.map(({ path, kind, text }): PartSheet => {
    const placed = readFile({ path, kind, text }, problems);
    for (const { place, row } of placed) {
      const name = `${kind} ${row.id}`;
      const earlier = takenBy.get(name);
      if (earlier === undefined) takenBy.set(name, place);
      else problems.push(told(`${place}, id`, `the id is taken by ${earlier}`, row.id));
    }
    return { path, kind, rows: placed.map(({ row }) => row) };
  });
  return problems.length > 0 ? bad(problems) : good(sheets);
}

interface PlacedRow {
  readonly place: string;
  readonly row: StoredRow[PartKind];
}

function readFile(file: PartFile, problems: Problem[]): PlacedRow[] {
  const text = file.text.startsWith('\uFEFF') ? file.text.slice(1) : file.text;
  const { data, errors } = papa.parse(text, { delimiter: delimiterOf(text) });
  for (const error of errors)
    problems.push({ path: `${file.path} row ${(error.row ?? 0) + 1}`, message: `not CSV: ${error.message}` });
  const headings = (data[0] ?? []).map((h) => h.trim());
  const columns = columnsOf(file.kind);
  const faults = headingProblems(file.path, headings, columns);
  problems.push(...faults);
  if (faults.length > 0 || errors.length > 0) return [];
  return data.slice(1).flatMap((cells, i) => {
    if (cells.every((c) => c.trim() === '')) return [];
    const place = `${file.path} row ${i + 2}`;
    return readRow(file.kind, columns, headings, cells, place, problems);
  });
}

function delimiterOf(text: string): string {
  const heading = text.split(/\r\n|\r|\n/, 1)[0] ?? '';
  const count = (mark: string): number => heading.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

function headingProblems(path: string, headings: readonly string[], columns: readonly Column[]): Problem[] {
  const known = columns.map((c) => c.heading);
  const place = `${path} row 1`;
  if (headings.every((h) => h === ''))
    return [{ path: place, message: `the table is empty; expected the headings ${known.join(', ')}` }];
  const unknown = headings.filter((h) => !known.includes(h));
  const missing = columns.filter((c) => !c.optional && !headings.includes(c.heading));
  const twice = headings.filter((h, i) => headings.indexOf(h) !== i);
  return [
    ...unknown.map((h) => told(place, `unknown column; known: ${known.join(', ')}`, h)),
    ...missing.map((c) => ({ path: place, message: `the column ${c.heading} is missing` })),
    ...twice.map((h) => told(place, 'the column is there twice', h)),
  ];
}

function readRow(
  kind: PartKind,
  columns: readonly Column[],
  headings: readonly string[],
  cells: readonly string[],
  place: string,
  problems: Problem[],
): PlacedRow[] {
  if (cells.length > headings.length) {
    problems.push(
      told(
        place,
        `${cells.length} cells under ${headings.length} headings; put text that holds a comma in double quotes`,
        cells.slice(headings.length),
      ),
    );
    return [];
  }
  const before = problems.length;
  const raw = rawRow(columns, headings, cells, place, problems);
  const checked = checkRow(kind, raw);
  const unread = new Set(problems.slice(before).map((p) => p.path));
  if (!checked.ok)
    problems.push(
      ...checked.problems
        .map((p) => ({ ...p, path: `${place}, ${headingOf(p.path)}` }))
        .filter((p) => !unread.has(p.path)),
    );
  return checked.ok && problems.length === before ? [{ place, row: checked.value }] : [];
}

function rawRow(
  columns: readonly Column[],
  headings: readonly string[],
  cells: readonly string[],
  place: string,
  problems: Problem[],
): Record<string, unknown> {
  const raw: Record<string, unknown> = {};
  for (const column of columns) {
    const text = (cells[headings.indexOf(column.heading)] ?? '').trim();
    if (text === '') continue;
    const read = readCell(column, text);
    if (read.ok) raw[column.key] = read.value;
    else problems.push(told(`${place}, ${column.heading}`, read.message, text));
  }
  return raw;
}

function told(path: string, message: string, value: unknown): Problem {
  return { path, message, got: shortJson(value) ?? '' };
}
