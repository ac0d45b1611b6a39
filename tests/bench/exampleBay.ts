import { readFileSync } from 'node:fs';
import path from 'node:path';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { namedPaths } from '../../shared/document/project/namedPaths.ts';
import { skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import { bayMesh, newJobMemory } from '../../shared/jobs/jobMemory.ts';
import { readProject } from '../../shared/jobs/readProject.ts';
import { buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';

const folder = path.resolve(import.meta.dirname, '../../models/bays/hillclimb');
const projectText = readFileSync(path.join(folder, 'project.json'), 'utf8');
const files = namedPaths(projectText).map((named) => ({
  path: named.path,
  bytes: new Uint8Array(readFileSync(path.join(folder, named.path))),
}));
const read = readProject({ projectText, files });
if (!read.ok) throw new Error('exampleBay: the example project does not read');
/** The example project, read. */
export const { resolved } = read.value;
const opened = await bayMesh(read.value, newJobMemory());
if (!opened.ok) throw new Error('exampleBay: the example mesh does not open');
const { mesh } = opened.value;

/** The index of the example bay, built anew at each call. */
export function buildExampleIndex(): ReturnType<typeof buildBayIndex> {
  return buildBayIndex(mesh, (part) => skinOfPart(resolved.project, part), UNWATCHED);
}
