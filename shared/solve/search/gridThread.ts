import { invariant } from '../../base/invariant.ts';
import { newFloats, SparseNumbers } from '../../base/sparseNumbers.ts';
import type { Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { type ClearSpace, isPlugged } from './clearSpace.ts';
import { type FineGrid, ROOMY_MM } from './fineGrid.ts';
import { cellAt } from './goalDistance.ts';
import { NodeQueue } from './nodeQueue.ts';

/** A place at the limit costs this many times its length more; one as short as a cell may be, so many more. */
const NARROW_COST = 1;
const DOUBTFUL_COST = 5;
const CLOSED = -1;
/**
 * What is known of a cell, 4 numbers beside each other: what it costs to come there, 0 = not yet reached; the cell before it, -1 at a
 * start; how dear it is, 1 or more, -1 = closed, 0 = not yet looked at; 1 when it was gone on from.
 */
const KNOWN = 4;
/** Whole numbers up to this are exact in float32. */
const MOST_EXACT = 2 ** 24;
const COST = 0;
const PARENT = 1;
const DEAR = 2;
const DONE = 3;
/** Lengths of steps to neighbours, in cells, and half of a cell's diagonal. */
const ROOTS = [0, 1, Math.SQRT2, Math.sqrt(3)] as const;
const HALF_DIAGONAL = Math.sqrt(3) / 2;
/** How much the way left counts against the way done. */
const GREED = 2;
const CELLS_BETWEEN_CANCEL_CHECKS = 4096;

export interface Thread {
  /** middles of the cells from a start to a goal; absent where there is none */
  readonly line?: readonly Vec3[];
  readonly start: number;
  readonly goal: number;
  readonly cells: number;
}

/**
 * The cheapest line from any start to any goal through the cells of a fine grid that are not surely blocked, wide places
 * preferred; nothing is asked of its bends. Method: greedy A* over 26 neighbours with margins asked as they are met.
 * `price` tells how many times dearer than elsewhere a place is, 1 or more; infinite closes it. At most `mostCells` cells are opened.
 */
export function gridThread(
  space: ClearSpace,
  fine: FineGrid,
  starts: readonly Vec3[],
  goals: readonly Vec3[],
  mostCells: number,
  price: (x: number, y: number, z: number) => number,
  watch: Watch,
): Thread {
  const { grid } = fine;
  const [nx, ny, nz] = grid.counts;
  invariant(nx * ny * nz <= MOST_EXACT, 'gridThread: the numbers of so many cells are not exact in float32');
  const goalOf = new Map(goals.map((g, i) => [cellAt(grid, g[0], g[1], g[2]), i]));
  const startOf = new Map(starts.map((s, i) => [cellAt(grid, s[0], s[1], s[2]), i]));
  const known = new SparseNumbers(newFloats, 7);
  const queue = new NodeQueue();
  const left = leftTo(goals);
  for (const cell of startOf.keys()) {
    const at = known.placeFor(KNOWN * cell);
    known.numbers[at + COST] = 1e-6;
    known.numbers[at + PARENT] = -1;
    queue.push(0, cell);
  }
  let cells = 0;
  for (let cell = queue.pop(); cell >= 0; cell = queue.pop()) {
    const at = known.placeFor(KNOWN * cell);
    if (known.numbers[at + DONE] !== 0) continue;
    known.numbers[at + DONE] = 1;
    if (goalOf.has(cell)) return traced(fine, known, cell, startOf, goalOf.get(cell) as number, cells);
    if (cells % CELLS_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
    if (cells++ >= mostCells) return { start: -1, goal: -1, cells };
    const here = known.numbers[at + COST] as number;
    const i = cell % nx;
    const j = Math.floor(cell / nx) % ny;
    const k = Math.floor(cell / (nx * ny));
    for (let c = Math.max(0, k - 1); c <= Math.min(nz - 1, k + 1); c++)
      for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++)
        for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
          const next = a + nx * (b + ny * c);
          const there = known.placeFor(KNOWN * next);
          const { numbers } = known;
          if (numbers[there + DONE] !== 0 || numbers[there + DEAR] === CLOSED) continue;
          const mm = grid.cellMm * (ROOTS[Math.abs(a - i) + Math.abs(b - j) + Math.abs(c - k)] as number);
          const before = numbers[there + COST] as number;
          if (before !== 0 && here + mm >= before) continue;
          const [x, y, z] = [fine.middle(0, a), fine.middle(1, b), fine.middle(2, c)];
          if (numbers[there + DEAR] === 0) {
            const margin = fine.marginMm(next, x, y, z);
            const times = goalOf.has(next) ? 1 : isPlugged(space, x, y, z) ? Number.POSITIVE_INFINITY : price(x, y, z);
            const narrow = dearness(margin, grid.cellMm * HALF_DIAGONAL);
            const isClosed = narrow === CLOSED || times === Number.POSITIVE_INFINITY;
            numbers[there + DEAR] = isClosed ? CLOSED : narrow * times;
            if (isClosed) continue;
          }
          const cost = here + mm * (numbers[there + DEAR] as number);
          if (before !== 0 && cost >= before) continue;
          numbers[there + COST] = cost;
          numbers[there + PARENT] = cell;
          queue.push(cost + GREED * left(x, y, z), next);
        }
  }
  return { start: -1, goal: -1, cells };
}

/** Straight distance to the nearest goal. */
function leftTo(goals: readonly Vec3[]): (x: number, y: number, z: number) => number {
  return (x, y, z) => {
    let least = Number.POSITIVE_INFINITY;
    for (const g of goals) least = Math.min(least, (x - g[0]) ** 2 + (y - g[1]) ** 2 + (z - g[2]) ** 2);
    return Math.sqrt(least);
  };
}

function dearness(margin: number, reachMm: number): number {
  if (margin >= ROOMY_MM) return 1;
  if (margin >= 0) return 1 + NARROW_COST * (1 - margin / ROOMY_MM);
  return margin >= -reachMm ? 1 + NARROW_COST + DOUBTFUL_COST * (-margin / reachMm) : CLOSED;
}

function traced(
  fine: FineGrid,
  known: SparseNumbers<Float32Array>,
  goalCell: number,
  startOf: ReadonlyMap<number, number>,
  goal: number,
  cells: number,
): Thread {
  const [nx, ny] = fine.grid.counts;
  const line: Vec3[] = [];
  let cell = goalCell;
  for (;;) {
    line.push([
      fine.middle(0, cell % nx),
      fine.middle(1, Math.floor(cell / nx) % ny),
      fine.middle(2, Math.floor(cell / (nx * ny))),
    ]);
    const at = known.placeFor(KNOWN * cell);
    const parent = known.numbers[at + PARENT] as number;
    if (parent < 0) break;
    cell = parent;
  }
  return { line: line.reverse(), start: startOf.get(cell) as number, goal, cells };
}
