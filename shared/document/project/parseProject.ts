import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { findJsonFault, lineAndColumn } from '../problems/findJsonFault.ts';
import { shortJson } from '../problems/shortJson.ts';
import { zodProblems } from '../problems/zodProblems.ts';
import { crossReferenceProblems } from './crossReferenceProblems.ts';
import { MIGRATIONS } from './migrations/index.ts';
import { type Migration, migrate, type RawProject } from './migrations/migrate.ts';
import { PROJECT_FORMAT, PROJECT_VERSION, Project } from './schema.ts';

/**
 * Reads a project file. Answers the project with defaults filled in, or everything wrong with it: first the text (JSON,
 * with line and column), then format and version, then the shape, then what one part of the file says about another.
 * Each stage reports all it finds and needs the one before, since a reference means nothing in a broken shape.
 * A byte order mark is passed over. Part numbers are looked up later, by `resolveProject`.
 */
export function parseProject(text: string): Result<Project> {
  const raw = parseJson(text);
  if (!raw.ok) return raw;
  const current = bringUp(raw.value, MIGRATIONS, PROJECT_VERSION);
  if (!current.ok) return current;
  const parsed = Project.safeParse(current.value);
  if (!parsed.success) return bad(zodProblems(parsed.error.issues, Project, current.value));
  const problems = crossReferenceProblems(parsed.data);
  return problems.length > 0 ? bad(problems) : good(parsed.data);
}

function parseJson(text: string): Result<unknown> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const fault = findJsonFault(body);
  if (fault === undefined) return good(JSON.parse(body, (_key, value: unknown) => (value === 0 ? 0 : value)));
  const { line, column } = lineAndColumn(body, fault.offset);
  return bad([{ path: '', message: `not JSON at line ${line}, column ${column}: ${fault.message}` }]);
}

/**
 * Checks the two words that every version of the file begins with, and migrates an older version to `newest`.
 * Exported for the tests of migration; the program calls it through `parseProject`.
 */
export function bringUp(raw: unknown, migrations: readonly Migration[], newest: number): Result<RawProject> {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return bad([seen('', 'expected a project: an object in { }', raw)]);
  const record = raw as RawProject;
  if (record['format'] !== PROJECT_FORMAT)
    return bad([seen('format', `not a project file: expected "${PROJECT_FORMAT}"`, record['format'])]);
  const version = record['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return bad([seen('version', 'expected a whole number from 1', version)]);
  if (version > newest)
    return bad([
      seen('version', `made by a newer Hosewright (version ${version}); this one reads up to ${newest}`, version),
    ]);
  return good(migrate(record, version, migrations));
}

function seen(path: string, message: string, value: unknown): Problem {
  const got = shortJson(value);
  return { path, message, ...(got === undefined ? {} : { got }) };
}
