/**
 * A bay mesh in the bay frame: mm, right-handed, +Z up. Triangles of one part stand together, so a part is a range.
 * Real meshes are not closed and not consistently wound: nothing here may rely on an inside.
 */
export interface TriMesh {
  /** x, y, z of each vertex, mm */
  readonly positions: Float32Array;
  /** three vertex numbers a triangle */
  readonly indices: Uint32Array;
  /** in order of their first triangle, together covering all triangles */
  readonly parts: readonly MeshPart[];
}

export interface MeshPart {
  readonly name: string;
  readonly firstTriangle: number;
  readonly triangleCount: number;
}

export function triangleCount(mesh: TriMesh): number {
  return mesh.indices.length / 3;
}

/** Name of the part that a triangle belongs to (binary search). */
export function partOfTriangle(mesh: TriMesh, triangle: number): MeshPart {
  let low = 0;
  let high = mesh.parts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((mesh.parts[middle] as MeshPart).firstTriangle <= triangle) low = middle;
    else high = middle - 1;
  }
  return mesh.parts[low] as MeshPart;
}
