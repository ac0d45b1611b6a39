import { good, type Result } from '../base/result.ts';
import type { Watch } from '../base/watch.ts';
import { bodyOfPart, skinOfPart } from '../document/project/skinOfPart.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { bayMesh, type JobMemory } from './jobMemory.ts';
import { readProject } from './readProject.ts';

/** Reads a project with its meshes and answers the bay as it is drawn. */
export async function openProjectJob(
  input: JobInput<'openProject'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'openProject'>>> {
  watch.report({ fraction: 0, doing: 'reading the project' });
  const read = readProject(input);
  if (!read.ok) return read;
  const { project } = read.value.resolved;
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const { mesh } = opened.value;
  return good({
    bay: {
      // Copies: the worker keeps its own.
      positions: mesh.positions.slice(),
      indices: mesh.indices.slice(),
      parts: mesh.parts.map((p) => ({
        ...p,
        skin: skinOfPart(project, p.name).id,
        body: bodyOfPart(project, p.name).id,
      })),
    },
    warnings: [...read.value.warnings, ...opened.value.warnings],
  });
}
