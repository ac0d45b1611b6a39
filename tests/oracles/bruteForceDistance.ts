import { add, addScaled, cross, distance, dot, scale, sub, type Vec3 } from '../../shared/base/vec3.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';

/** Corner of a triangle. */
export function cornerOf(mesh: TriMesh, triangle: number, corner: number): Vec3 {
  const at = 3 * mesh.indices[3 * triangle + corner]!;
  return [mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!];
}

export function distanceToSegment(p: Vec3, a: Vec3, b: Vec3): number {
  const ab = sub(b, a);
  const squared = dot(ab, ab);
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, a), ab) / squared));
  return distance(p, addScaled(a, ab, t));
}

/**
 * Slow twin of the triangle distance, by another way: the least of the three edges' distances and, where the foot of the
 * perpendicular falls inside by barycentric weights from areas, the height over the plane.
 */
export function distanceToTriangle(p: Vec3, a: Vec3, b: Vec3, c: Vec3): number {
  const edges = Math.min(distanceToSegment(p, a, b), distanceToSegment(p, b, c), distanceToSegment(p, c, a));
  const normal = cross(sub(b, a), sub(c, a));
  const squared = dot(normal, normal);
  if (squared === 0) return edges;
  const foot = addScaled(p, normal, -dot(sub(p, a), normal) / squared);
  const weights = [
    dot(normal, cross(sub(c, b), sub(foot, b))),
    dot(normal, cross(sub(a, c), sub(foot, c))),
    dot(normal, cross(sub(b, a), sub(foot, a))),
  ];
  return weights.every((weight) => weight >= 0) ? Math.min(edges, distance(p, foot)) : edges;
}

/** Distance to the nearest of the triangles (all, or the named ones); Infinity for none. */
export function bruteForceDistance(mesh: TriMesh, p: Vec3, triangles?: Uint32Array): number {
  let best = Infinity;
  for (const t of triangles ?? new Uint32Array(mesh.indices.length / 3).map((_, n) => n)) {
    best = Math.min(best, distanceToTriangle(p, cornerOf(mesh, t, 0), cornerOf(mesh, t, 1), cornerOf(mesh, t, 2)));
  }
  return best;
}

/** First hit along a ray by Moeller and Trumbore's test on every triangle: its distance, or Infinity. */
export function bruteForceRay(mesh: TriMesh, origin: Vec3, direction: Vec3): number {
  let best = Infinity;
  for (let t = 0; t < mesh.indices.length / 3; t++) {
    const a = cornerOf(mesh, t, 0);
    const e1 = sub(cornerOf(mesh, t, 1), a);
    const e2 = sub(cornerOf(mesh, t, 2), a);
    const h = cross(direction, e2);
    const det = dot(e1, h);
    if (det === 0) continue;
    const s = sub(origin, a);
    const u = dot(s, h) / det;
    const q = cross(s, e1);
    const v = dot(direction, q) / det;
    const along = dot(e2, q) / det;
    if (u >= 0 && v >= 0 && u + v <= 1 && along >= 0) best = Math.min(best, along);
  }
  return best;
}

/** A point of a triangle by its weights on b and c. */
export function pointOf(mesh: TriMesh, triangle: number, u: number, v: number): Vec3 {
  const a = cornerOf(mesh, triangle, 0);
  const ab = sub(cornerOf(mesh, triangle, 1), a);
  const ac = sub(cornerOf(mesh, triangle, 2), a);
  return add(a, add(scale(ab, u), scale(ac, v)));
}
