import { addScaled, anySquareTo, cross, distance, dot, lengthOf, lerp, sub, unit, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { offAxisMm, stepRad } from './poseSweep.ts';
import type { Sweep } from './sweep.ts';
import { addQuad, newTriangleList, type TriangleList } from './triangleList.ts';

type Triangle = readonly [Vec3, Vec3, Vec3];

/** mm. Cells in which the profile of a turning part is told; larger parts get coarser ones. */
const LEAST_CELL_MM = 1;
const MOST_CELLS_OUT = 400;

/**
 * The surface of what triangles sweep in whole turns: the profile, distance from the axis against height along it, told in
 * cells of 1 mm (the reach over 400 where that is more), its outline turned round. All that is swept lies within it, to the
 * chords of its circles (SWEEP_WITHIN_MM); it is larger by less than three cells.
 */
export function revolve(
  triangles: readonly Triangle[],
  turn: Extract<Sweep, { kind: 'turn' }>,
  watch: Watch,
): TriangleList {
  const axis = unit(turn.axis);
  const across = anySquareTo(axis);
  const third = cross(axis, across);
  const reachMm = triangles.flat().reduce((most, p) => Math.max(most, offAxisMm(turn, p)), 0);
  const cellMm = Math.max(LEAST_CELL_MM, reachMm / MOST_CELLS_OUT);
  const taken = new Set<number>();
  for (const [i, triangle] of triangles.entries()) {
    stopIfCancelled(watch);
    watch.report({ fraction: i / triangles.length, doing: 'sweeping' });
    const [a, b, c] = triangle.map((p): Vec3 => {
      const from = sub(p, turn.point);
      return [dot(from, across), dot(from, third), dot(from, axis)];
    }) as [Vec3, Vec3, Vec3];
    markCells([a, b, c], cellMm, taken);
  }
  const list = newTriangleList();
  for (const [r0, z0, r1, z1] of outlineOf(taken)) {
    const sides = Math.ceil((2 * Math.PI) / stepRad(Math.max(r0, r1) * cellMm));
    const at = (r: number, z: number, k: number): Vec3 => {
      const rad = (2 * Math.PI * (k % sides)) / sides;
      const out = addScaled(
        addScaled(turn.point, across, r * cellMm * Math.cos(rad)),
        third,
        r * cellMm * Math.sin(rad),
      );
      return addScaled(out, axis, z * cellMm);
    };
    for (let k = 0; k < sides; k++) addQuad(list, at(r0, z0, k), at(r1, z1, k), at(r1, z1, k + 1), at(r0, z0, k + 1));
  }
  return list;
}

/** Cells of one distance from the axis, heights from minus half to half of it. */
const ROW = 2 ** 26;

function cellKey(i: number, j: number): number {
  return i * ROW + j + ROW / 2;
}

/** Marks every cell that the triangle goes through when it is turned, in halves until it is no larger than a cell. z: along the axis. */
function markCells(triangle: Triangle, cellMm: number, taken: Set<number>): void {
  const rest: Triangle[] = [triangle];
  for (let next = rest.pop(); next !== undefined; next = rest.pop()) {
    const [a, b, c] = next;
    const sides = [distance(a, b), distance(b, c), distance(c, a)] as const;
    const longest = Math.max(...sides);
    if (longest > cellMm) {
      const [p, q, r]: Triangle = longest === sides[0] ? [a, b, c] : longest === sides[1] ? [b, c, a] : [c, a, b];
      const middle = lerp(p, q, 0.5);
      rest.push([p, middle, r], [middle, q, r]);
      continue;
    }
    const radii = [a, b, c].map(([x, y]) => lengthOf(x, y));
    const heights = [a, b, c].map((p) => p[2]);
    const most = Math.max(...radii);
    // Every place of it lies within the longest side of each corner, and nowhere further out than its corners.
    const least = Math.max(0, most - longest);
    for (let i = Math.floor(least / cellMm); i <= Math.floor(most / cellMm); i++)
      for (let j = Math.floor(Math.min(...heights) / cellMm); j <= Math.floor(Math.max(...heights) / cellMm); j++)
        taken.add(cellKey(i, j));
  }
}

type Segment = readonly [r0: number, z0: number, r1: number, z1: number];

/** The sides between cells that are taken and cells that are not, straight runs of them as one; none on the axis. */
function outlineOf(taken: ReadonlySet<number>): Segment[] {
  const upright = new Map<number, number[]>();
  const level = new Map<number, number[]>();
  const put = (lines: Map<number, number[]>, line: number, at: number): void => {
    const on = lines.get(line);
    if (on === undefined) lines.set(line, [at]);
    else on.push(at);
  };
  for (const cell of taken) {
    const i = Math.floor(cell / ROW);
    const j = (cell % ROW) - ROW / 2;
    if (!taken.has(cellKey(i + 1, j))) put(upright, i + 1, j);
    if (i > 0 && !taken.has(cellKey(i - 1, j))) put(upright, i, j);
    if (!taken.has(cellKey(i, j + 1))) put(level, j + 1, i);
    if (!taken.has(cellKey(i, j - 1))) put(level, j, i);
  }
  return [
    ...[...upright].flatMap(([r, on]) => runsOf(on).map(([from, to]): Segment => [r, from, r, to])),
    ...[...level].flatMap(([z, on]) => runsOf(on).map(([from, to]): Segment => [from, z, to, z])),
  ];
}

function runsOf(numbers: readonly number[]): (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const n of [...new Set(numbers)].sort((p, q) => p - q)) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === n) last[1] = n + 1;
    else runs.push([n, n + 1]);
  }
  return runs;
}
