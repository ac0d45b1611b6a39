import { readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';
import { type NamedPath, namedPaths } from '../../shared/document/project/namedPaths.ts';
import { parseProject } from '../../shared/document/project/parseProject.ts';
import type { NamedFile, ProjectFiles } from '../../shared/document/project/projectFiles.ts';

export const PROJECT_FILE = 'project.json';

/** A project's files together with the place they came from. */
export interface ProjectOnDisk extends ProjectFiles {
  /** The folder of the project file, with symbolic links resolved. */
  readonly folder: string;
  /** The project file itself. */
  readonly file: string;
}

/**
 * Reads a project file (or the `project.json` of a folder) and every file it names. All files that cannot be read are
 * reported at once, with whatever else is wrong with the project's text. A name may not lead out of the project's folder, not through a symbolic link either.
 */
export async function readProjectFiles(given: string): Promise<Result<ProjectOnDisk>> {
  const found = await findProjectFile(given);
  if (!found.ok) return found;
  const file = found.value;
  const folder = path.dirname(file);
  const projectText = await readFile(file, 'utf8');
  const read = await Promise.all(namedPaths(projectText).map((named) => readNamed(folder, named)));
  const missing = read.flatMap((one) => (one.ok ? [] : one.problems));
  if (missing.length > 0) return bad([...textProblems(projectText), ...missing]);
  return good({ projectText, files: read.flatMap((one) => (one.ok ? [one.value] : [])), folder, file });
}

/** One file of a project, read only when the project names it; undefined when it does not. */
export async function readNamedFile(projectFile: string, wanted: string): Promise<Result<NamedFile> | undefined> {
  const named = namedPaths(await readFile(projectFile, 'utf8')).find((one) => one.path === wanted);
  return named && readNamed(path.dirname(projectFile), named);
}

/** The real place of a project named by its file or its folder. */
export async function findProjectFile(given: string): Promise<Result<string>> {
  try {
    const isFolder = (await stat(given)).isDirectory();
    const file = await realpath(isFolder ? path.join(given, PROJECT_FILE) : given);
    if (!(await stat(file)).isFile()) return bad([{ path: given, message: 'expected a project file or its folder' }]);
    return good(file);
  } catch (error) {
    return bad([{ path: given, message: `no project can be read there (${reasonOf(error)})` }]);
  }
}

/** Where a contained name really lies; undefined when it leads out of the folder through a link. */
export async function realPlace(folder: string, name: string): Promise<string | undefined> {
  const place = await realpath(path.join(folder, name));
  return isBelow(folder, place) ? place : undefined;
}

/** Whether a resolved place lies below a resolved folder. */
export function isBelow(folder: string, place: string): boolean {
  const relative = path.relative(folder, place);
  return relative !== '' && relative !== '..' && !relative.startsWith(`..${path.sep}`) && !path.isAbsolute(relative);
}

async function readNamed(folder: string, named: NamedPath): Promise<Result<NamedFile>> {
  const got = JSON.stringify(named.path);
  try {
    const place = await realPlace(folder, named.path);
    if (place === undefined) {
      return bad([{ path: named.where, message: "expected a file below the project's folder", got }]);
    }
    return good({ path: named.path, bytes: plainBytes(await readFile(place)) });
  } catch (error) {
    return bad([{ path: named.where, message: `expected a file that can be read (${reasonOf(error)})`, got }]);
  }
}

/** What is wrong with the text itself, so that it comes in one list with the files that are missing. */
function textProblems(projectText: string): readonly Problem[] {
  const parsed = parseProject(projectText);
  return parsed.ok ? [] : parsed.problems;
}

/** A plain array over its own memory: small files share one pool in Node, which must not travel along. */
function plainBytes(buffer: Buffer): Uint8Array {
  return Uint8Array.from(buffer);
}

/** Why the system refused, in a few words. */
export function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException | undefined)?.code;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'not found';
  if (code === 'EACCES' || code === 'EPERM') return 'not allowed';
  if (code === 'EISDIR') return 'it is a folder';
  return code ?? String(error);
}
