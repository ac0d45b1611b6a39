import { access, mkdir, realpath } from 'node:fs/promises';
import path from 'node:path';
import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';
import { isContainedPath, namedPaths } from '../../shared/document/project/namedPaths.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';
import { atomicWrite } from './atomicWrite.ts';
import { isBelow, PROJECT_FILE, realPlace, reasonOf } from './readProjectFiles.ts';

/**
 * Saves a project's text over its file. `added` files and `changed` part tables are written first, so that the text never
 * names a file that is not there; none is written when one of them may not be.
 */
export async function saveProject(
  projectFile: string,
  projectText: string,
  added: readonly NamedFile[],
  changed: readonly NamedFile[] = [],
): Promise<Result<string>> {
  const folder = path.dirname(projectFile);
  const refused = [...(await addProblems(folder, added)), ...(await tableProblems(folder, changed))];
  if (refused.length > 0) return bad(refused);
  const done = await writeFiles(folder, [...added, ...changed]);
  if (!done.ok) return done;
  try {
    await atomicWrite(projectFile, projectText);
    return good(projectFile);
  } catch (error) {
    return bad([
      { path: projectFile, message: `could not be saved (${reasonOf(error)}); what stood there still stands` },
    ]);
  }
}

/** Lays new files below a project's resolved folder. One that stands there already is left as it is and reported. */
export async function addFiles(folder: string, added: readonly NamedFile[]): Promise<Result<readonly string[]>> {
  const problems = await addProblems(folder, added);
  return problems.length > 0 ? bad(problems) : writeFiles(folder, added);
}

/** Writes part tables over those that stand below a project's resolved folder: `.csv` files that are there, and no others. */
export async function replaceTables(folder: string, changed: readonly NamedFile[]): Promise<Result<readonly string[]>> {
  const problems = await tableProblems(folder, changed);
  return problems.length > 0 ? bad(problems) : writeFiles(folder, changed);
}

async function addProblems(folder: string, added: readonly NamedFile[]): Promise<Problem[]> {
  return (await Promise.all(added.map((one) => refusal(folder, one.path)))).flat();
}

async function tableProblems(folder: string, changed: readonly NamedFile[]): Promise<Problem[]> {
  const checked = await Promise.all(
    changed.map(async ({ path: name }): Promise<Problem[]> => {
      const standing = isContainedPath(name) && name.endsWith('.csv') ? await placeIfThere(folder, name) : undefined;
      return standing === path.join(folder, name)
        ? []
        : [{ path: name, message: "expected a part table that stands below the project's folder" }];
    }),
  );
  return checked.flat();
}

async function placeIfThere(folder: string, name: string): Promise<string | undefined> {
  return realPlace(folder, name).catch(() => undefined);
}

async function writeFiles(folder: string, files: readonly NamedFile[]): Promise<Result<readonly string[]>> {
  try {
    for (const one of files) await writeBelow(folder, one);
    return good(files.map((one) => one.path));
  } catch (error) {
    return bad([{ path: folder, message: `a file could not be written (${reasonOf(error)})` }]);
  }
}

/** Saves a project with all the files it names into another folder, which must hold no project yet. */
export async function saveProjectCopy(
  folder: string,
  projectText: string,
  files: readonly NamedFile[],
): Promise<Result<string>> {
  const file = path.join(await realpath(folder), PROJECT_FILE);
  if (await exists(file)) {
    return bad([{ path: file, message: 'a project stands in this folder already; choose another' }]);
  }
  const named = new Set(namedPaths(projectText).map((one) => one.path));
  return saveProject(
    file,
    projectText,
    files.filter((one) => named.has(one.path)),
  );
}

/** Writes a file at its contained path below a resolved folder, making the folders between. */
export async function writeBelow(folder: string, file: NamedFile): Promise<void> {
  const place = path.join(folder, file.path);
  await mkdir(path.dirname(place), { recursive: true });
  await atomicWrite(place, file.bytes);
}

async function refusal(folder: string, name: string): Promise<Problem[]> {
  if (!isContainedPath(name)) {
    return [{ path: name, message: "expected a path below the project's folder, with forward slashes" }];
  }
  if (await exists(path.join(folder, name)))
    return [{ path: name, message: 'a file of this name stands there already' }];
  const nearest = await nearestFolder(path.dirname(path.join(folder, name)));
  return nearest === folder || isBelow(folder, nearest)
    ? []
    : [{ path: name, message: "expected a path below the project's folder, not through a link" }];
}

async function nearestFolder(folder: string): Promise<string> {
  try {
    return await realpath(folder);
  } catch {
    return nearestFolder(path.dirname(folder));
  }
}

async function exists(file: string): Promise<boolean> {
  return access(file).then(
    () => true,
    () => false,
  );
}
