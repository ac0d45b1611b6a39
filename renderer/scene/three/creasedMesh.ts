/** Corner positions and normals of a mesh, three corners a triangle, and its sharp edges as pairs of points. */
export interface CreasedMesh {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly edges: Float32Array;
}

/** Triangles that meet at more than this are an edge to the eye: a 24-sided round still looks round. */
const CREASE_DEGREES = 32;

/**
 * Normals for drawing: at each corner the mean of the neighbouring triangles that lie within the crease angle of the
 * corner's own, so that rounds are round and edges are edges, whatever normals the file had.
 *
 * @param positions x, y, z of each vertex; @param indices three vertex numbers a triangle. Time and memory grow with the
 * number of triangles; triangles without area keep a zero normal.
 */
export function creasedMesh(positions: Float32Array, indices: Uint32Array): CreasedMesh {
  const faceNormals = triangleNormals(positions, indices);
  const around = trianglesAround(positions.length / 3, indices);
  const cosine = Math.cos((CREASE_DEGREES * Math.PI) / 180);
  const corners = new Float32Array(indices.length * 3);
  const normals = new Float32Array(indices.length * 3);
  for (let corner = 0; corner < indices.length; corner++) {
    const vertex = indices[corner] as number;
    corners.set(positions.subarray(vertex * 3, vertex * 3 + 3), corner * 3);
    cornerNormal(normals, corner, vertex, faceNormals, around, cosine);
  }
  return { positions: corners, normals, edges: creaseEdges(positions, indices, faceNormals, cosine) };
}

/** Area-weighted normals, not of unit length: their length is twice the triangle's area. */
function triangleNormals(p: Float32Array, indices: Uint32Array): Float32Array {
  const normals = new Float32Array(indices.length);
  for (let t = 0; t < indices.length; t += 3) {
    const a = (indices[t] as number) * 3;
    const b = (indices[t + 1] as number) * 3;
    const c = (indices[t + 2] as number) * 3;
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    normals[t] = uy * vz - uz * vy;
    normals[t + 1] = uz * vx - ux * vz;
    normals[t + 2] = ux * vy - uy * vx;
  }
  return normals;
}

/** For each vertex the triangles that use it, packed: those of vertex v are list[first[v]] .. list[first[v + 1]]. */
function trianglesAround(vertexCount: number, indices: Uint32Array): { first: Uint32Array; list: Uint32Array } {
  const first = new Uint32Array(vertexCount + 1);
  for (const vertex of indices) first[vertex + 1]!++;
  for (let v = 0; v < vertexCount; v++) first[v + 1]! += first[v]!;
  const next = first.slice();
  const list = new Uint32Array(indices.length);
  indices.forEach((vertex, corner) => {
    list[next[vertex]!++] = Math.floor(corner / 3);
  });
  return { first, list };
}

function cornerNormal(
  out: Float32Array,
  corner: number,
  vertex: number,
  faces: Float32Array,
  around: { first: Uint32Array; list: Uint32Array },
  cosine: number,
): void {
  const own = Math.floor(corner / 3) * 3;
  let [x, y, z] = [0, 0, 0];
  for (let i = around.first[vertex]!; i < around.first[vertex + 1]!; i++) {
    const other = around.list[i]! * 3;
    if (other !== own && cosineBetween(faces, own, other) < cosine) continue;
    x += faces[other]!;
    y += faces[other + 1]!;
    z += faces[other + 2]!;
  }
  const size = Math.hypot(x, y, z);
  if (size > 0) out.set([x / size, y / size, z / size], corner * 3);
}

function cosineBetween(n: Float32Array, a: number, b: number): number {
  const product = n[a]! * n[b]! + n[a + 1]! * n[b + 1]! + n[a + 2]! * n[b + 2]!;
  const sizes = Math.hypot(n[a]!, n[a + 1]!, n[a + 2]!) * Math.hypot(n[b]!, n[b + 1]!, n[b + 2]!);
  return sizes > 0 ? product / sizes : 1;
}

/** Edges between exactly two triangles that meet at more than the crease angle; a real scan's torn rims are left out. */
function creaseEdges(positions: Float32Array, indices: Uint32Array, faces: Float32Array, cosine: number): Float32Array {
  const vertexCount = positions.length / 3;
  const seen = new Map<number, number>();
  const ends: number[] = [];
  for (let corner = 0; corner < indices.length; corner++) {
    const triangle = Math.floor(corner / 3);
    const a = indices[corner]!;
    const b = indices[triangle * 3 + ((corner + 1) % 3)]!;
    const key = Math.min(a, b) * vertexCount + Math.max(a, b);
    const other = seen.get(key);
    if (other === undefined) seen.set(key, triangle);
    else if (cosineBetween(faces, triangle * 3, other * 3) < cosine) ends.push(a, b);
  }
  const edges = new Float32Array(ends.length * 3);
  ends.forEach((vertex, i) => {
    edges.set(positions.subarray(vertex * 3, vertex * 3 + 3), i * 3);
  });
  return edges;
}
