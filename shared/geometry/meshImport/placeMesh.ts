import { type LengthUnit, MM_PER } from '../../base/units.ts';
import type { TriMesh } from '../triMesh.ts';

/** Which direction of a file points up in the bay. */
export const UP_AXES = ['+x', '-x', '+y', '-y', '+z', '-z'] as const;
export type UpAxis = (typeof UP_AXES)[number];

/**
 * For each up axis, where the bay's x, y and z come from: file axis (0, 1, 2) and sign. Each is a rotation, never a
 * mirror image, about a coordinate axis, by the smallest angle that brings the file's up to +Z:
 *
 * | up | turn | bay x, y, z from file |
 * |---|---|---|
 * | +z | none | x, y, z |
 * | -z | 180 degrees about x | x, -y, -z |
 * | +y | +90 degrees about x | x, -z, y |
 * | -y | -90 degrees about x | x, z, -y |
 * | +x | -90 degrees about y | -z, y, x |
 * | -x | +90 degrees about y | z, y, -x |
 */
const SOURCES: Record<UpAxis, readonly [Source, Source, Source]> = {
  '+z': [from(0, 1), from(1, 1), from(2, 1)],
  '-z': [from(0, 1), from(1, -1), from(2, -1)],
  '+y': [from(0, 1), from(2, -1), from(1, 1)],
  '-y': [from(0, 1), from(2, 1), from(1, -1)],
  '+x': [from(2, -1), from(1, 1), from(0, 1)],
  '-x': [from(2, 1), from(1, 1), from(0, -1)],
};

interface Source {
  readonly axis: number;
  readonly sign: number;
}

function from(axis: number, sign: number): Source {
  return { axis, sign };
}

/**
 * A mesh in the numbers of its file brought to mm and +Z up, in float32; triangles and parts stay as they are. The turn
 * for each up axis stands in the table above.
 */
export function placeMesh(mesh: TriMesh, unit: LengthUnit, upAxis: UpAxis): TriMesh {
  const sources = SOURCES[upAxis];
  const positions = new Float32Array(mesh.positions.length);
  for (let axis = 0; axis < 3; axis++) {
    const source = sources[axis]!;
    const factor = source.sign * MM_PER[unit];
    // + 0 turns -0 into 0, so that a mesh turned about has the same bytes as one made so.
    for (let at = axis; at < positions.length; at += 3)
      positions[at] = mesh.positions[at - axis + source.axis]! * factor + 0;
  }
  return { positions, indices: mesh.indices, parts: mesh.parts };
}
