import type { MeshPart, TriMesh } from './triMesh.ts';

/** A mesh without the parts that `leaveOut` names; vertices stay as they are. The same mesh when nothing is left out. */
export function withoutParts(mesh: TriMesh, leaveOut: (partName: string) => boolean): TriMesh {
  const kept = mesh.parts.filter((part) => !leaveOut(part.name));
  if (kept.length === mesh.parts.length) return mesh;
  const indices = new Uint32Array(3 * kept.reduce((sum, part) => sum + part.triangleCount, 0));
  const parts: MeshPart[] = [];
  let firstTriangle = 0;
  for (const part of kept) {
    const from = 3 * part.firstTriangle;
    indices.set(mesh.indices.subarray(from, from + 3 * part.triangleCount), 3 * firstTriangle);
    parts.push({ ...part, firstTriangle });
    firstTriangle += part.triangleCount;
  }
  return { positions: mesh.positions, indices, parts };
}
