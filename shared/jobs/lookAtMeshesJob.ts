import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { partOf, stopIfCancelled, type Watch } from '../base/watch.ts';
import { boxOfMesh } from '../geometry/box.ts';
import { guessUnit } from '../geometry/meshImport/guessUnit.ts';
import { mergeMeshes } from '../geometry/meshImport/mergeMeshes.ts';
import { openMesh } from '../geometry/meshImport/openMesh.ts';
import type { TriMesh } from '../geometry/triMesh.ts';
import type { JobInput, JobOutput } from './contract.ts';

/** Corners that an outline is drawn from. */
const SAMPLE_CORNERS = 6000;

/** The job `lookAtMeshes`: opens mesh files as they are, and answers what their owner has to be asked about. */
export async function lookAtMeshesJob(
  { files }: JobInput<'lookAtMeshes'>,
  watch: Watch,
): Promise<Result<JobOutput<'lookAtMeshes'>>> {
  if (files.length === 0) return bad([{ path: 'files', message: 'expected at least one mesh file' }]);
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const meshes: TriMesh[] = [];
  for (const [i, { path, bytes }] of files.entries()) {
    stopIfCancelled(watch);
    const part = partOf(watch, i / files.length, (i + 1) / files.length);
    part.report({ fraction: 0, doing: `reading ${path}` });
    const opened = await openMesh(path, bytes, partOf(part, 0.2, 1));
    if (!opened.ok) problems.push(...opened.problems);
    else {
      meshes.push(opened.value.mesh);
      warnings.push(...opened.value.warnings);
    }
  }
  if (problems.length > 0) return bad(problems);
  stopIfCancelled(watch);
  const mesh = mergeMeshes(meshes);
  if (mesh.indices.length === 0) return bad([{ path: 'files', message: 'there is not one triangle in it' }]);
  const box = boxOfMesh(mesh);
  return good({
    meshes: files.map(({ path, bytes }) => ({ path, sha256: bytesToHex(sha256(bytes)) })),
    triangles: mesh.indices.length / 3,
    parts: mesh.parts.map(({ name }) => name),
    sample: sampleOf(mesh),
    box: { min: box.min, max: box.max },
    unit: guessUnit(box),
    warnings,
  });
}

/** Corners taken evenly through the list of triangles. */
function sampleOf({ positions, indices }: TriMesh): Float32Array {
  const count = Math.min(SAMPLE_CORNERS, indices.length);
  const sample = new Float32Array(3 * count);
  for (let i = 0; i < count; i++) {
    const vertex = indices[Math.floor((i * indices.length) / count)] as number;
    sample.set(positions.subarray(3 * vertex, 3 * vertex + 3), 3 * i);
  }
  return sample;
}
