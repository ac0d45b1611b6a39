import { SAME_DIRECTION_RAD } from '../../base/tolerances.ts';
import { angleBetween, cross, length, scale as scaled, turnAbout, UP, unit, type Vec3 } from '../../base/vec3.ts';
import type { TriMesh } from '../triMesh.ts';

/** How a bay is brought to its true size and level, after its meshes lie by their unit and up axis. */
export interface SquareUp {
  /** true length over length in the meshes, above 0; absent = 1 */
  readonly scale?: number;
  /** which way is truly up, not zero; absent = +Z */
  readonly level?: Vec3;
}

/** The least rotation that brings a direction to +Z: its axis, a unit vector, and its angle in radians. */
interface Turn {
  readonly axis: Vec3;
  readonly angleRad: number;
}

function turnOf(level: Vec3): Turn {
  const axis = cross(level, UP);
  // Upside down, any level axis will do; the bay's x is as good as another.
  return { axis: length(axis) === 0 ? [1, 0, 0] : unit(axis), angleRad: angleBetween(level, UP) };
}

/** A direction of the meshes as they lie, in the bay levelled. Exact to rounding. */
export function levelled(direction: Vec3, level: Vec3 | undefined): Vec3 {
  if (level === undefined) return direction;
  const { axis, angleRad } = turnOf(level);
  return turnAbout(direction, axis, angleRad);
}

/** A direction of the levelled bay as it was before: `levelled` taken back. */
export function unlevelled(direction: Vec3, level: Vec3 | undefined): Vec3 {
  if (level === undefined) return direction;
  const { axis, angleRad } = turnOf(level);
  return turnAbout(direction, axis, -angleRad);
}

/** A mesh in mm brought to its true size and level: scaled about the origin, then turned about it. Float32; parts and triangles stay. */
export function squareUp(mesh: TriMesh, { scale = 1, level }: SquareUp): TriMesh {
  const turns = level !== undefined && angleBetween(level, UP) > SAME_DIRECTION_RAD;
  if (scale === 1 && !turns) return mesh;
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((axis) => scaled(levelled(axis, turns ? level : undefined), scale)) as [Vec3, Vec3, Vec3];
  const positions = new Float32Array(mesh.positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    const [x, y, z] = [mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!];
    for (let k = 0 as 0 | 1 | 2; k < 3; k++)
      positions[at + k] = x * columns[0][k] + y * columns[1][k] + z * columns[2][k];
  }
  return { positions, indices: mesh.indices, parts: mesh.parts };
}
