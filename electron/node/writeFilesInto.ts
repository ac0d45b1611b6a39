import { mkdir, realpath } from 'node:fs/promises';
import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';
import { isContainedPath } from '../../shared/document/project/namedPaths.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';
import { reasonOf } from './readProjectFiles.ts';
import { writeBelow } from './saveProject.ts';

/** Writes files of our own making into a folder, which is made when missing; files of the same names are replaced. */
export async function writeFilesInto(folder: string, files: readonly NamedFile[]): Promise<Result<readonly string[]>> {
  const problems: Problem[] = files
    .filter((file) => !isContainedPath(file.path))
    .map((file) => ({ path: file.path, message: 'expected a path below the folder chosen' }));
  if (problems.length > 0) return bad(problems);
  try {
    await mkdir(folder, { recursive: true });
    const place = await realpath(folder);
    for (const file of files) await writeBelow(place, file);
    return good(files.map((file) => file.path));
  } catch (error) {
    return bad([{ path: folder, message: `could not be written (${reasonOf(error)})` }]);
  }
}
