import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';
import type { OpenedProject } from '../../shared/desktop/contract.ts';
import { namedPaths } from '../../shared/document/project/namedPaths.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';

/** What is needed of a picked file; a browser's `File` has it. */
export interface PickedFile {
  readonly name: string;
  /** From the picked folder on: `bay/tables/hoses.csv`. */
  readonly webkitRelativePath: string;
  text(): Promise<string>;
  arrayBuffer(): Promise<ArrayBuffer>;
}

const PROJECT_FILE = 'project.json';

/** The project in a folder that the user picked: its `project.json` and the files it names, all missing ones reported. */
export async function projectFromFolder(picked: readonly PickedFile[]): Promise<Result<OpenedProject>> {
  const projectFile = picked.find((file) => belowFolder(file) === PROJECT_FILE);
  if (projectFile === undefined) {
    return bad([{ path: PROJECT_FILE, message: 'expected this file in the folder chosen' }]);
  }
  const projectText = await projectFile.text();
  const byPath = new Map(picked.map((file) => [belowFolder(file), file]));
  const files: NamedFile[] = [];
  const problems: Problem[] = [];
  for (const { where, path } of namedPaths(projectText)) {
    const file = byPath.get(path);
    if (file === undefined) {
      problems.push({ path: where, message: 'expected a file in the folder chosen', got: JSON.stringify(path) });
    } else files.push({ path, bytes: new Uint8Array(await file.arrayBuffer()) });
  }
  if (problems.length > 0) return bad(problems);
  return good({ label: folderName(projectFile), savesInPlace: false, projectText, files });
}

function belowFolder(file: PickedFile): string {
  const slash = file.webkitRelativePath.indexOf('/');
  return slash < 0 ? file.name : file.webkitRelativePath.slice(slash + 1);
}

function folderName(file: PickedFile): string {
  return file.webkitRelativePath.split('/')[0] || 'project';
}
