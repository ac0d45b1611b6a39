import { cross, dot, sub, type Vec3 } from '../base/vec3.ts';
import type { MeshPart, TriMesh } from './triMesh.ts';

/** A piece of a mesh that is a part of its own: what of it lies in a box, given by a corner and the three edges from there, mm. */
export interface CutOut {
  readonly name: string;
  readonly corner: Vec3;
  readonly edges: readonly [Vec3, Vec3, Vec3];
  /** the part it is cut out of; absent = whatever lies in the box */
  readonly of?: string | undefined;
}

/**
 * A mesh with pieces of its parts made parts of their own, one after the other: a triangle goes to a piece when its middle lies in the piece's
 * box (edges that span no room take nothing). Triangles and vertices stay what they were; only their order and the parts change. What is left of
 * a part keeps its name; a part of which nothing is left is gone. A piece named as a part that is there joins it.
 */
export function cutOutParts(mesh: TriMesh, cutOuts: readonly CutOut[]): TriMesh {
  if (cutOuts.length === 0) return mesh;
  const names = [...new Set([...mesh.parts, ...cutOuts].map(({ name }) => name))];
  const owners = ownersOf(mesh, names);
  for (const cutOut of cutOuts) takeIn(mesh, cutOut, names, owners);
  return ordered(mesh, names, owners);
}

/** The number of each triangle's part among the names. */
function ownersOf({ indices, parts }: TriMesh, names: readonly string[]): Int32Array {
  const owners = new Int32Array(indices.length / 3);
  for (const { name, firstTriangle, triangleCount } of parts)
    owners.fill(names.indexOf(name), firstTriangle, firstTriangle + triangleCount);
  return owners;
}

function takeIn(
  mesh: TriMesh,
  { name, of, corner, edges }: CutOut,
  names: readonly string[],
  owners: Int32Array,
): void {
  const own = names.indexOf(name);
  const from = of === undefined ? null : names.indexOf(of);
  const isInside = insideBox(corner, edges);
  for (let triangle = 0; triangle < owners.length; triangle++) {
    if (from !== null && owners[triangle] !== from) continue;
    if (isInside(middleOf(mesh, triangle))) owners[triangle] = own;
  }
}

function middleOf({ positions, indices }: TriMesh, triangle: number): Vec3 {
  const along = (axis: number): number => {
    let sum = 0;
    for (let corner = 0; corner < 3; corner++) sum += positions[3 * indices[3 * triangle + corner]! + axis]!;
    return sum / 3;
  };
  return [along(0), along(1), along(2)];
}

/** Whether a place lies in a box: its share along each edge is from 0 to 1 (Cramer's rule). */
function insideBox(corner: Vec3, [u, v, w]: CutOut['edges']): (place: Vec3) => boolean {
  const across = [cross(v, w), cross(w, u), cross(u, v)] as const;
  const volume = dot(u, across[0]);
  return (place) => {
    const from = sub(place, corner);
    return volume !== 0 && across.every((side) => isShare(dot(from, side) / volume));
  };
}

function isShare(share: number): boolean {
  return share >= 0 && share <= 1;
}

/** The mesh with the triangles of each part together, in the order of the names. */
function ordered({ positions, indices }: TriMesh, names: readonly string[], owners: Int32Array): TriMesh {
  const counts = new Uint32Array(names.length);
  for (const owner of owners) counts[owner]!++;
  const parts: MeshPart[] = [];
  const next = new Uint32Array(names.length);
  let firstTriangle = 0;
  for (const [i, name] of names.entries()) {
    next[i] = firstTriangle;
    if (counts[i]! > 0) parts.push({ name, firstTriangle, triangleCount: counts[i]! });
    firstTriangle += counts[i]!;
  }
  const sorted = new Uint32Array(indices.length);
  for (const [triangle, owner] of owners.entries()) {
    const at = next[owner]!++;
    for (let corner = 0; corner < 3; corner++) sorted[3 * at + corner] = indices[3 * triangle + corner]!;
  }
  return { positions, indices: sorted, parts };
}
