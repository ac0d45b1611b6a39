import { UNWATCHED, type Watch } from '../../base/watch.ts';
import { type MeshPart, type TriMesh, triangleCount } from '../triMesh.ts';
import { strokeSweep, turnSweep } from './poseSweep.ts';
import { revolve } from './revolve.ts';
import type { Sweep } from './sweep.ts';
import { partTriangles, type TriangleList } from './triangleList.ts';

/**
 * The mesh with the surface of what its moving parts sweep, behind it as further parts of the same names: no place of a part
 * is, at any moment of its movement, further than SWEEP_WITHIN_MM outside of it. sweepOf: how the part of that name moves;
 * undefined = stands. mm, bay frame. The same mesh where nothing moves.
 */
export function withSweeps(mesh: TriMesh, sweepOf: (partName: string) => Sweep | undefined): TriMesh {
  const swept = mesh.parts.flatMap((part) => {
    const sweep = sweepOf(part.name);
    return sweep === undefined || part.triangleCount === 0 ? [] : [{ part, list: sweptSurface(mesh, part, sweep) }];
  });
  if (swept.length === 0) return mesh;
  const added = swept.reduce((sum, { list }) => sum + list.corners.length / 3, 0);
  const positions = new Float32Array(mesh.positions.length + 3 * added);
  positions.set(mesh.positions);
  const indices = new Uint32Array(mesh.indices.length + added);
  indices.set(mesh.indices);
  const parts: MeshPart[] = [...mesh.parts];
  let vertex = mesh.positions.length / 3;
  let firstTriangle = triangleCount(mesh);
  for (const { part, list } of swept) {
    positions.set(list.corners, 3 * vertex);
    const count = list.corners.length / 9;
    for (let i = 0; i < 3 * count; i++) indices[3 * firstTriangle + i] = vertex + i;
    parts.push({ name: part.name, firstTriangle, triangleCount: count });
    vertex += 3 * count;
    firstTriangle += count;
  }
  return { positions, indices, parts };
}

/**
 * The surface of what one part of a mesh sweeps, as triangles of its own: no place of the part is, at any moment of its movement,
 * further than SWEEP_WITHIN_MM outside of it. mm, bay frame. A great turn of a fine part takes a second or two.
 */
export function sweptSurface(mesh: TriMesh, part: MeshPart, sweep: Sweep, watch: Watch = UNWATCHED): TriangleList {
  const triangles = partTriangles(mesh, part);
  if (sweep.kind === 'stroke') return strokeSweep(triangles, sweep, watch);
  const isWhole = sweep.toRad - sweep.fromRad >= 2 * Math.PI;
  return isWhole ? revolve(triangles, sweep, watch) : turnSweep(triangles, sweep, watch);
}
