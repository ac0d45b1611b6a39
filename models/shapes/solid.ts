import { cross, dot, sub, type Vec3 } from '../../shared/base/vec3.ts';

/** A closed surface in the making: mm, bay frame, three vertex numbers a triangle, wound so that normals point out. */
export interface Solid {
  readonly points: Vec3[];
  readonly indices: number[];
}

/** Several solids as one, in order. */
export function join(...solids: readonly Solid[]): Solid {
  const points: Vec3[] = [];
  const indices: number[] = [];
  for (const solid of solids) {
    const first = points.length;
    for (const p of solid.points) points.push(p);
    for (const i of solid.indices) indices.push(first + i);
  }
  return { points, indices };
}

/** Six times the enclosed volume, positive when the triangles are wound outward, mm^3. */
export function signedVolume6(solid: Solid): number {
  let sum = 0;
  const at = (i: number): Vec3 => solid.points[solid.indices[i] as number] as Vec3;
  const origin = solid.points[0] as Vec3;
  for (let i = 0; i < solid.indices.length; i += 3) {
    sum += dot(sub(at(i), origin), cross(sub(at(i + 1), origin), sub(at(i + 2), origin)));
  }
  return sum;
}

/** The same solid wound outward. */
export function outward(solid: Solid): Solid {
  if (signedVolume6(solid) >= 0) return solid;
  const indices: number[] = [];
  for (let i = 0; i < solid.indices.length; i += 3) {
    indices.push(solid.indices[i] as number, solid.indices[i + 2] as number, solid.indices[i + 1] as number);
  }
  return { points: solid.points, indices };
}
