import type { Vec3 } from '../../base/vec3.ts';
import type { MeshPart, TriMesh } from '../triMesh.ts';

/** Triangles being made: three corners each, mm. */
export interface TriangleList {
  readonly corners: number[];
}

export function newTriangleList(): TriangleList {
  return { corners: [] };
}

export function addTriangle({ corners }: TriangleList, a: Vec3, b: Vec3, c: Vec3): void {
  corners.push(a[0], a[1], a[2], b[0], b[1], b[2], c[0], c[1], c[2]);
}

/** Two triangles over four corners that go round. */
export function addQuad(list: TriangleList, a: Vec3, b: Vec3, c: Vec3, d: Vec3): void {
  addTriangle(list, a, b, c);
  addTriangle(list, a, c, d);
}

/** The corners of every triangle of a part. */
export function partTriangles({ positions, indices }: TriMesh, part: MeshPart): (readonly [Vec3, Vec3, Vec3])[] {
  const corner = (slot: number): Vec3 => {
    const at = 3 * (indices[slot] as number);
    return [positions[at] as number, positions[at + 1] as number, positions[at + 2] as number];
  };
  return Array.from({ length: part.triangleCount }, (_, i) => {
    const slot = 3 * (part.firstTriangle + i);
    return [corner(slot), corner(slot + 1), corner(slot + 2)] as const;
  });
}

/** Every edge of the triangles once, told by the places of its ends. */
export function edgesOf(triangles: readonly (readonly [Vec3, Vec3, Vec3])[]): (readonly [Vec3, Vec3])[] {
  const seen = new Map<string, readonly [Vec3, Vec3]>();
  for (const [a, b, c] of triangles)
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const [one, other] = [p.join(), q.join()];
      seen.set(one < other ? `${one};${other}` : `${other};${one}`, [p, q]);
    }
  return [...seen.values()];
}
