/** A mesh for drawing: vertices with their normals, three vertex numbers a triangle, and its sharp edges as pairs of points. */
export interface CreasedMesh {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly indices: Uint32Array;
  readonly edges: Float32Array;
}

/** Triangles that meet at more than this are an edge to the eye: a 24-sided round still looks round. */
const CREASE_DEGREES = 32;
const HALF_CREASE_COSINE = Math.cos((CREASE_DEGREES * Math.PI) / 360);

/**
 * Normals for drawing: at each corner the mean of the neighbouring triangles that lie within the crease angle of the
 * corner's own, so that rounds are round and edges are edges, whatever normals the file had. A vertex stands in the
 * answer once for each normal that its corners have: the card turns as few as there are to see.
 *
 * @param positions x, y, z of each vertex; @param indices three vertex numbers a triangle. Time and memory grow with the
 * number of triangles; triangles without area keep a zero normal.
 */
export function creasedMesh(positions: Float32Array, indices: Uint32Array): CreasedMesh {
  const faces = triangleNormals(positions, indices);
  const around = trianglesAround(positions.length / 3, indices);
  const cosine = Math.cos((CREASE_DEGREES * Math.PI) / 180);
  const drawn: Drawn = {
    indices: new Uint32Array(indices.length),
    from: new Uint32Array(indices.length),
    normals: new Float32Array(indices.length * 3),
    count: 0,
  };
  for (let vertex = 0; vertex < positions.length / 3; vertex++)
    drawVertex(drawn, vertex, indices, faces, around, cosine);
  const places = new Float32Array(drawn.count * 3);
  for (let i = 0; i < drawn.count; i++) {
    const from = drawn.from[i]! * 3;
    places[i * 3] = positions[from]!;
    places[i * 3 + 1] = positions[from + 1]!;
    places[i * 3 + 2] = positions[from + 2]!;
  }
  return {
    positions: places,
    normals: drawn.normals.slice(0, drawn.count * 3),
    indices: drawn.indices,
    edges: creaseEdges(positions, indices, faces, around, cosine),
  };
}

/** What is drawn so far: triangles by drawn vertices, and of each drawn vertex the vertex it comes from and its normal. */
interface Drawn {
  readonly indices: Uint32Array;
  readonly from: Uint32Array;
  readonly normals: Float32Array;
  count: number;
}

/** Of each triangle its unit normal (zero without area) and its doubled area. */
interface Faces {
  readonly unit: Float32Array;
  readonly doubleArea: Float32Array;
}

/** For each vertex the triangles that use it, packed: those of vertex v are list[first[v]] .. list[first[v + 1]]. */
interface Around {
  readonly first: Uint32Array;
  readonly list: Uint32Array;
}

function triangleNormals(p: Float32Array, indices: Uint32Array): Faces {
  const unit = new Float32Array(indices.length);
  const doubleArea = new Float32Array(indices.length / 3);
  for (let t = 0; t < indices.length; t += 3) {
    const a = indices[t]! * 3;
    const b = indices[t + 1]! * 3;
    const c = indices[t + 2]! * 3;
    const ux = p[b]! - p[a]!;
    const uy = p[b + 1]! - p[a + 1]!;
    const uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!;
    const vy = p[c + 1]! - p[a + 1]!;
    const vz = p[c + 2]! - p[a + 2]!;
    const x = uy * vz - uz * vy;
    const y = uz * vx - ux * vz;
    const z = ux * vy - uy * vx;
    // Math.hypot guards against overflow that millimetres never reach, at many times the cost.
    const size = Math.sqrt(x * x + y * y + z * z);
    doubleArea[t / 3] = size;
    if (size === 0) continue;
    unit[t] = x / size;
    unit[t + 1] = y / size;
    unit[t + 2] = z / size;
  }
  return { unit, doubleArea };
}

function trianglesAround(vertexCount: number, indices: Uint32Array): Around {
  const first = new Uint32Array(vertexCount + 1);
  for (let corner = 0; corner < indices.length; corner++) first[indices[corner]! + 1]!++;
  for (let v = 0; v < vertexCount; v++) first[v + 1]! += first[v]!;
  const next = first.slice();
  const list = new Uint32Array(indices.length);
  for (let corner = 0; corner < indices.length; corner++) list[next[indices[corner]!]!++] = (corner / 3) | 0;
  return { first, list };
}

/** Puts a vertex into what is drawn, once for each normal of the triangles around it. */
function drawVertex(
  drawn: Drawn,
  vertex: number,
  indices: Uint32Array,
  faces: Faces,
  around: Around,
  cosine: number,
): void {
  const before = drawn.count;
  if (isRound(vertex, faces, around)) {
    const own = around.list[around.first[vertex]!]!;
    cornerNormal(drawn.normals, before, own, vertex, faces, around, -1);
    drawn.from[drawn.count++] = vertex;
    for (let i = around.first[vertex]!; i < around.first[vertex + 1]!; i++)
      standAt(drawn, around.list[i]!, vertex, indices, before);
    return;
  }
  for (let i = around.first[vertex]!; i < around.first[vertex + 1]!; i++) {
    const triangle = around.list[i]!;
    // Where it may come to stand; it stays there when none like it is there yet.
    cornerNormal(drawn.normals, drawn.count, triangle, vertex, faces, around, cosine);
    const known = sameNormal(drawn.normals, before, drawn.count);
    if (known === drawn.count) drawn.from[drawn.count++] = vertex;
    standAt(drawn, triangle, vertex, indices, known);
  }
}

/** Lets a triangle stand at a drawn vertex where it stands at a vertex of the mesh. */
function standAt(drawn: Drawn, triangle: number, vertex: number, indices: Uint32Array, at: number): void {
  for (let corner = triangle * 3; corner < triangle * 3 + 3; corner++)
    if (indices[corner] === vertex) drawn.indices[corner] = at;
}

/** Whether no two triangles around a vertex can meet at more than the crease angle: all are within half of it of the first. */
function isRound(vertex: number, { unit }: Faces, around: Around): boolean {
  const first = around.first[vertex]!;
  const end = around.first[vertex + 1]!;
  if (first === end) return false;
  for (let i = first + 1; i < end; i++)
    if (cosineBetween(unit, around.list[first]!, around.list[i]!) < HALF_CREASE_COSINE) return false;
  return true;
}

/** The first of the normals from `first` on that is the one at `last`. */
function sameNormal(normals: Float32Array, first: number, last: number): number {
  const at = last * 3;
  for (let i = first * 3; i < at; i += 3)
    if (normals[i] === normals[at] && normals[i + 1] === normals[at + 1] && normals[i + 2] === normals[at + 2])
      return i / 3;
  return last;
}

/** The normal that a triangle has at one of its vertices, written at place `to`. */
function cornerNormal(
  out: Float32Array,
  to: number,
  own: number,
  vertex: number,
  faces: Faces,
  around: Around,
  cosine: number,
): void {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = around.first[vertex]!; i < around.first[vertex + 1]!; i++) {
    const other = around.list[i]!;
    if (other !== own && cosineBetween(faces.unit, own, other) < cosine) continue;
    const weight = faces.doubleArea[other]!;
    x += faces.unit[other * 3]! * weight;
    y += faces.unit[other * 3 + 1]! * weight;
    z += faces.unit[other * 3 + 2]! * weight;
  }
  const size = Math.sqrt(x * x + y * y + z * z) || 1;
  out[to * 3] = x / size;
  out[to * 3 + 1] = y / size;
  out[to * 3 + 2] = z / size;
}

function cosineBetween(unit: Float32Array, a: number, b: number): number {
  const [i, j] = [a * 3, b * 3];
  return unit[i]! * unit[j]! + unit[i + 1]! * unit[j + 1]! + unit[i + 2]! * unit[j + 2]!;
}

/** Edges between exactly two triangles that meet at more than the crease angle; a real scan's torn rims are left out. */
function creaseEdges(
  positions: Float32Array,
  indices: Uint32Array,
  faces: Faces,
  around: Around,
  cosine: number,
): Float32Array {
  const ends: number[] = [];
  for (let corner = 0; corner < indices.length; corner++) {
    const triangle = (corner / 3) | 0;
    const a = indices[corner]!;
    const b = indices[corner % 3 === 2 ? corner - 2 : corner + 1]!;
    const other = onlyOther(indices, around, triangle, a, b);
    if (other > triangle && cosineBetween(faces.unit, triangle, other) < cosine) ends.push(a, b);
  }
  const edges = new Float32Array(ends.length * 3);
  ends.forEach((vertex, i) => {
    edges.set(positions.subarray(vertex * 3, vertex * 3 + 3), i * 3);
  });
  return edges;
}

/** The one other triangle that shares the edge a-b; -1 when there is none or more than one. */
function onlyOther(indices: Uint32Array, around: Around, triangle: number, a: number, b: number): number {
  let found = -1;
  for (let i = around.first[a]!; i < around.first[a + 1]!; i++) {
    const other = around.list[i]!;
    const t = other * 3;
    if (other === triangle || (indices[t] !== b && indices[t + 1] !== b && indices[t + 2] !== b)) continue;
    if (found >= 0) return -1;
    found = other;
  }
  return found;
}
