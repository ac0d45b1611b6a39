import { SWEEP_WITHIN_MM } from '../../base/tolerances.ts';
import { distance, lengthOf, lerp, rejectFrom, scale, sub, turnAbout, unit, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Sweep } from './sweep.ts';
import { addQuad, addTriangle, edgesOf, newTriangleList, type TriangleList } from './triangleList.ts';

type Triangles = readonly (readonly [Vec3, Vec3, Vec3])[];

/** Half of what the swept surface may be wrong by, mm: one half for chords of arcs, one for ruled faces cut in two. */
const HALF_MM = SWEEP_WITHIN_MM / 2;

/**
 * The surface of what triangles sweep in a straight stroke: they themselves at both ends, and the parallelogram that each
 * edge sweeps. Exact.
 */
export function strokeSweep(
  triangles: Triangles,
  stroke: Extract<Sweep, { kind: 'stroke' }>,
  watch: Watch,
): TriangleList {
  const along = unit(stroke.direction);
  const ends = [scale(along, stroke.fromMm), scale(along, stroke.toMm)] as const;
  const poses = ends.map(
    (by) =>
      (p: Vec3): Vec3 =>
        shifted(p, by),
  );
  return between(triangles, poses, () => 1, watch);
}

/**
 * The surface of what triangles sweep in a part of a turn, within SWEEP_WITHIN_MM: they themselves at poses between which no
 * chord is further than half of that from its arc, and between poses what each edge sweeps, in pieces so short that cutting
 * their ruled faces in two errs by the other half at most.
 */
export function turnSweep(triangles: Triangles, turn: Extract<Sweep, { kind: 'turn' }>, watch: Watch): TriangleList {
  const axis = unit(turn.axis);
  const reachMm = triangles.flat().reduce((most, p) => Math.max(most, offAxisMm(turn, p)), 0);
  const turnRad = turn.toRad - turn.fromRad;
  const steps = Math.max(1, Math.ceil(turnRad / stepRad(reachMm)));
  const poses = Array.from({ length: steps + 1 }, (_, k) => {
    const rad = turn.fromRad + (turnRad * k) / steps;
    return (p: Vec3): Vec3 => shifted(turnAbout(sub(p, turn.point), axis, rad), turn.point);
  });
  // Cut in two, a ruled face is off by a quarter of the difference of its opposite sides: the edge square to the axis, turned.
  const pieces = ([p, q]: readonly [Vec3, Vec3]): number =>
    Math.max(1, Math.ceil((distance(rejectFrom(p, axis), rejectFrom(q, axis)) * (turnRad / steps)) / (4 * HALF_MM)));
  return between(triangles, poses, pieces, watch);
}

/** rad. The turn whose chord is within half the tolerance of its arc, at a distance from the axis. */
export function stepRad(radiusMm: number): number {
  return radiusMm <= HALF_MM ? Math.PI / 2 : Math.min(Math.PI / 4, 2 * Math.acos(1 - HALF_MM / radiusMm));
}

function between(
  triangles: Triangles,
  poses: readonly ((p: Vec3) => Vec3)[],
  pieces: (edge: readonly [Vec3, Vec3]) => number,
  watch: Watch,
): TriangleList {
  const list = newTriangleList();
  const edges = edgesOf(triangles);
  for (const at of poses) for (const [a, b, c] of triangles) addTriangle(list, at(a), at(b), at(c));
  for (const [i, edge] of edges.entries()) {
    stopIfCancelled(watch);
    watch.report({ fraction: i / edges.length, doing: 'sweeping' });
    const count = pieces(edge);
    for (let piece = 0; piece < count; piece++) {
      const from = lerp(edge[0], edge[1], piece / count);
      const to = lerp(edge[0], edge[1], (piece + 1) / count);
      for (let k = 0; k + 1 < poses.length; k++) {
        const [here, there] = [poses[k] as (p: Vec3) => Vec3, poses[k + 1] as (p: Vec3) => Vec3];
        addQuad(list, here(from), here(to), there(to), there(from));
      }
    }
  }
  return list;
}

function shifted(p: Vec3, by: Vec3): Vec3 {
  return [p[0] + by[0], p[1] + by[1], p[2] + by[2]];
}

/** mm. How far a place is from the axis of a turn. */
export function offAxisMm({ point, axis }: Extract<Sweep, { kind: 'turn' }>, p: Vec3): number {
  const [x, y, z] = rejectFrom(sub(p, point), unit(axis));
  return lengthOf(x, y, z);
}
