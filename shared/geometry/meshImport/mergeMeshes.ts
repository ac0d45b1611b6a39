import type { MeshPart, TriMesh } from '../triMesh.ts';
import { uniqueNames } from './uniqueNames.ts';

/** One mesh of several in one frame and unit, parts in order; a part name that comes again is numbered. */
export function mergeMeshes(meshes: readonly TriMesh[]): TriMesh {
  const positions = new Float32Array(meshes.reduce((sum, mesh) => sum + mesh.positions.length, 0));
  const indices = new Uint32Array(meshes.reduce((sum, mesh) => sum + mesh.indices.length, 0));
  const parts: MeshPart[] = [];
  let atPosition = 0;
  let atIndex = 0;
  for (const mesh of meshes) {
    positions.set(mesh.positions, atPosition);
    const firstVertex = atPosition / 3;
    const firstTriangle = atIndex / 3;
    for (const index of mesh.indices) indices[atIndex++] = index + firstVertex;
    for (const part of mesh.parts) parts.push({ ...part, firstTriangle: part.firstTriangle + firstTriangle });
    atPosition += mesh.positions.length;
  }
  const names = uniqueNames(parts.map((part) => part.name));
  return { positions, indices, parts: parts.map((part, n) => ({ ...part, name: names[n]! })) };
}
