import { PART_KINDS } from '../parts/columns.ts';

/**
 * Whether a path stays below the folder it is relative to: forward slashes, no leading slash or drive letter, no `.` or
 * `..` or empty part, no control characters. A host still resolves symbolic links itself.
 */
export function isContainedPath(path: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are exactly what is refused
  if (path === '' || /[\\\u0000-\u001f]/.test(path) || /^[a-zA-Z]:/.test(path)) return false;
  return path.split('/').every((part) => part !== '' && part !== '.' && part !== '..');
}

/** A file that a project names: where the project names it, such as `bay.meshes[0].path`, and the path. */
export interface NamedPath {
  readonly where: string;
  readonly path: string;
}

/**
 * The files a host has to read before a project can be opened: each mesh and table once, in the order of the project
 * file. Deliberately forgiving: a text that is no project names nothing, and a path that leaves the project's folder is
 * left out, because the project's own parser reports both with all their company.
 */
export function namedPaths(projectText: string): NamedPath[] {
  const project = fieldsOf(parseJson(projectText));
  const tables = fieldsOf(project['tables']);
  const named = [
    ...listOf(fieldsOf(project['bay'])['meshes']).map((mesh, i) => ({
      where: `bay.meshes[${i}].path`,
      path: fieldsOf(mesh)['path'],
    })),
    ...PART_KINDS.flatMap((kind) => listOf(tables[kind]).map((path, i) => ({ where: `tables.${kind}[${i}]`, path }))),
  ];
  const seen = new Set<string>();
  return named.filter((entry): entry is NamedPath => {
    const { path } = entry;
    if (typeof path !== 'string' || !isContainedPath(path) || seen.has(path)) return false;
    seen.add(path);
    return true;
  });
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch {
    return undefined;
  }
}

function fieldsOf(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}
