import type { Vec3 } from '../base/vec3.ts';
import { type TriMesh, triangleCount } from './triMesh.ts';

/** An upright box, mm, bay frame; its faces belong to it. The box round nothing has min = +Infinity, max = -Infinity. */
export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/**
 * The tightest box round a mesh, or round the named triangles of it only; in the units of the mesh.
 * Vertices that no triangle uses do not count. Exact (float32 coordinates compared, never rounded).
 */
export function boxOfMesh(mesh: TriMesh, triangles?: Uint32Array): Box {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const count = triangles ? triangles.length : triangleCount(mesh);
  for (let n = 0; n < count; n++) {
    const triangle = triangles ? triangles[n]! : n;
    for (let corner = 0; corner < 3; corner++) {
      const at = 3 * mesh.indices[3 * triangle + corner]!;
      for (let axis = 0; axis < 3; axis++) {
        const value = mesh.positions[at + axis]!;
        if (value < min[axis]!) min[axis] = value;
        if (value > max[axis]!) max[axis] = value;
      }
    }
  }
  return { min, max };
}

/** The box with every face moved outward by marginMm (inward where negative). The box round nothing stays so. */
export function growBox(box: Box, marginMm: number): Box {
  const { min, max } = box;
  return {
    min: [min[0] - marginMm, min[1] - marginMm, min[2] - marginMm],
    max: [max[0] + marginMm, max[1] + marginMm, max[2] + marginMm],
  };
}

/** True for a box without a single point. */
export function isEmptyBox(box: Box): boolean {
  return !(box.min[0] <= box.max[0] && box.min[1] <= box.max[1] && box.min[2] <= box.max[2]);
}
