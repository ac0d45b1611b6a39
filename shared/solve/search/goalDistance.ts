import type { Vec3 } from '../../base/vec3.ts';
import type { Box } from '../../geometry/box.ts';
import { type ClearSpace, isPlugged } from './clearSpace.ts';
import { NodeQueue } from './nodeQueue.ts';

/** A regular grid of cubic cells over the bounds. */
export interface Grid {
  readonly origin: Vec3;
  readonly cellMm: number;
  readonly counts: readonly [number, number, number];
}

/** Passing a cell whose middle is blocked but which may hold a clear place costs this many times its length. */
const DOUBTFUL_COST = 3;
/** What a cell holds; 0 = not yet looked at. */
const CLEAR = 1;
const DOUBTFUL = 2;
const BLOCKED = 3;

export function gridOver(bounds: Box, cellMm: number): Grid {
  const count = (axis: 0 | 1 | 2): number => Math.max(1, Math.ceil((bounds.max[axis] - bounds.min[axis]) / cellMm));
  return { origin: bounds.min, cellMm, counts: [count(0), count(1), count(2)] };
}

/** Number of the cell that holds a point; points outside belong to the nearest cell. */
export function cellAt(grid: Grid, x: number, y: number, z: number): number {
  const { origin, cellMm, counts } = grid;
  const i = Math.min(counts[0] - 1, Math.max(0, Math.floor((x - origin[0]) / cellMm)));
  const j = Math.min(counts[1] - 1, Math.max(0, Math.floor((y - origin[1]) / cellMm)));
  const k = Math.min(counts[2] - 1, Math.max(0, Math.floor((z - origin[2]) / cellMm)));
  return i + counts[0] * (j + counts[1] * k);
}

/** What each cell holds, found out when first asked and kept: shared by all guides over one field. */
export function newCellStates(grid: Grid): Uint8Array {
  return new Uint8Array(grid.counts[0] * grid.counts[1] * grid.counts[2]);
}

/**
 * Distance to the nearest goal through cells that are not surely blocked, mm, for every cell nearer than `enough`
 * says; infinite where no goal can be reached. Method: Dijkstra over 26 neighbours. A cell is left out only if its middle is too near
 * by more than half the cell's diagonal allows, so an infinite distance proves that there is no way, bends or not.
 * Not a lower bound on the way's length: steps along a grid are up to 8 % too long, and doubtful cells are made dear.
 */
export function goalDistances(
  space: ClearSpace,
  grid: Grid,
  states: Uint8Array,
  goals: readonly Vec3[],
  starts: readonly Vec3[],
): Float32Array {
  const distances = new Float32Array(states.length).fill(Number.POSITIVE_INFINITY);
  const queue = new NodeQueue();
  for (const [x, y, z] of goals) {
    distances[cellAt(grid, x, y, z)] = 0;
    queue.push(0, cellAt(grid, x, y, z));
  }
  const wanted = new Set(starts.map(([x, y, z]) => cellAt(grid, x, y, z)));
  let enough = Number.POSITIVE_INFINITY;
  for (let node = queue.pop(); node >= 0; node = queue.pop()) {
    const here = distances[node] as number;
    if (here > enough) break;
    if (wanted.delete(node) && wanted.size === 0) enough = BEYOND_STARTS * here + BEYOND_STARTS_CELLS * grid.cellMm;
    spread(space, grid, states, distances, queue, node, here);
  }
  return distances;
}

/** The distances are worked out to this many times the farthest start's, and so many cells more. */
const BEYOND_STARTS = 1.7;
const BEYOND_STARTS_CELLS = 12;

function spread(
  space: ClearSpace,
  grid: Grid,
  states: Uint8Array,
  distances: Float32Array,
  queue: NodeQueue,
  node: number,
  here: number,
): void {
  const [nx, ny, nz] = grid.counts;
  const i = node % nx;
  const j = Math.floor(node / nx) % ny;
  const k = Math.floor(node / (nx * ny));
  for (let c = Math.max(0, k - 1); c <= Math.min(nz - 1, k + 1); c++) {
    for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++) {
      for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
        const steps = Math.abs(a - i) + Math.abs(b - j) + Math.abs(c - k);
        if (steps === 0) continue;
        const cell = a + nx * (b + ny * c);
        const state = states[cell] || judge(space, grid, states, cell, a, b, c);
        if (state === BLOCKED || isPlugged(space, middle(grid, 0, a), middle(grid, 1, b), middle(grid, 2, c))) continue;
        const there = Math.fround(here + grid.cellMm * Math.sqrt(steps) * (state === DOUBTFUL ? DOUBTFUL_COST : 1));
        if (there >= (distances[cell] as number)) continue;
        distances[cell] = there;
        queue.push(there, cell);
      }
    }
  }
}

function judge(
  space: ClearSpace,
  grid: Grid,
  states: Uint8Array,
  cell: number,
  a: number,
  b: number,
  c: number,
): number {
  const [x, y, z] = [middle(grid, 0, a), middle(grid, 1, b), middle(grid, 2, c)];
  const reach = (space.field.lipschitz * grid.cellMm * Math.sqrt(3)) / 2;
  const coarse = space.field.coarseMarginMm(x, y, z) + space.offsetMm;
  const margin = coarse >= 0 ? coarse : space.field.marginMm(x, y, z, -space.offsetMm) + space.offsetMm;
  const found = margin >= 0 ? CLEAR : margin >= -reach ? DOUBTFUL : BLOCKED;
  states[cell] = found;
  return found;
}

function middle(grid: Grid, axis: 0 | 1 | 2, index: number): number {
  return grid.origin[axis] + (index + 0.5) * grid.cellMm;
}
