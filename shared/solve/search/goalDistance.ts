import { invariant } from '../../base/invariant.ts';
import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import type { Box } from '../../geometry/box.ts';
import { type ClearSpace, isPlugged, mostFallMm } from './clearSpace.ts';

/** A regular grid of cubic cells over the bounds. */
export interface Grid {
  readonly origin: Vec3;
  readonly cellMm: number;
  readonly counts: readonly [number, number, number];
}

/** How far it is to a goal from a place, mm, as far as is known; infinite where no goal can be reached. */
export interface Guide {
  at(x: number, y: number, z: number): number;
  /** No more than that, told without working out anything. */
  leastAt(x: number, y: number, z: number): number;
}

/** Passing a cell whose middle is blocked but which may hold a clear place costs this many times its length. */
const DOUBTFUL_COST = 3;
/** What a cell holds; 0 = not yet looked at. */
export const CLEAR = 1;
export const DOUBTFUL = 2;
export const BLOCKED = 3;

/** What a cell of this size with its middle there holds: CLEAR, DOUBTFUL or BLOCKED. */
export type CellJudge = (space: ClearSpace, cellMm: number, x: number, y: number, z: number) => number;

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
 * Distance to the nearest goal through cells that are not surely blocked, mm, worked out as far as it is asked for.
 * Method: from the goals over 26 neighbours, with steps of 3, 4 and 5 thirds of a cell (chamfer
 * distance, Borgefors 1986), so that buckets serve as the queue; towards the place that is asked for first, by A* that is taken up again
 * for each further place (Silver 2005), or all round, by Dijkstra's method: both tell the same distances. A cell is left out only if its middle is too near by
 * more than half the cell's diagonal allows, so an infinite distance proves that there is no way, bends or not. Not a
 * lower bound on the way's length: in the open it is 6 % too short to 8 % too long, and doubtful cells are made dear.
 * Another judge of cells makes another guide, of which that proof does not hold.
 */
export class GoalDistance implements Guide {
  /** thirds of a cell */
  private readonly thirds: Int32Array;
  private readonly settled: Uint8Array;
  /** cells that wait, by the least thirds of a cell that a way through them takes */
  private readonly waiting: (CellStack | undefined)[] = [];
  private waitingCells = 0;
  /** the first of those that is not empty yet */
  private bucket = 0;
  /** steps of the cell that is worked towards; all round where there is none */
  private aim: Vec3 | undefined;
  /** steps of the cells of the goals */
  private readonly goals: readonly Vec3[];
  private isBegun = false;
  private readonly space: ClearSpace;
  private readonly grid: Grid;
  private readonly states: Uint8Array;
  private readonly judge: CellJudge;
  private readonly allRound: boolean;
  private readonly walked = new Map<number, number>();

  /** allRound: for one that is asked where it `leads` */
  constructor(
    space: ClearSpace,
    grid: Grid,
    states: Uint8Array,
    goals: readonly Vec3[],
    { judge = judgedByMiddle, allRound = false }: { readonly judge?: CellJudge; readonly allRound?: boolean } = {},
  ) {
    this.space = space;
    this.grid = grid;
    this.states = states;
    this.judge = judge;
    this.allRound = allRound;
    this.thirds = new Int32Array(states.length).fill(FAR);
    this.settled = new Uint8Array(states.length);
    this.goals = goals.map(([x, y, z]) => this.stepsOf(cellAt(grid, x, y, z)));
  }

  /** Distance from the cell of a point, mm; infinite when no goal can be reached from there. */
  at(x: number, y: number, z: number): number {
    const cell = cellAt(this.grid, x, y, z);
    if (!this.isBegun) this.begin(cell);
    while (this.settled[cell] === 0) {
      const node = this.next();
      if (node < 0) return Number.POSITIVE_INFINITY;
      this.settled[node] = 1;
      this.spread(node);
    }
    return ((this.thirds[cell] as number) * this.grid.cellMm) / 3;
  }

  leastAt(x: number, y: number, z: number): number {
    const cell = cellAt(this.grid, x, y, z);
    return ((this.settled[cell] === 0 ? this.leastThirds(cell) : (this.thirds[cell] as number)) * this.grid.cellMm) / 3;
  }

  /** Of a cell that is not settled: as if nothing were in the way, and not less than by any way that is begun. */
  private leastThirds(cell: number): number {
    const { isBegun } = this;
    if (isBegun && this.waitingCells === 0) return Number.POSITIVE_INFINITY;
    const [i, j, k] = this.stepsOf(cell);
    let least = Number.POSITIVE_INFINITY;
    for (const goal of this.goals) least = Math.min(least, thirdsBetween(goal, i, j, k));
    return isBegun ? Math.max(least, this.bucket - this.leftFrom(i, j, k)) : least;
  }

  private begin(aim: number): void {
    if (!this.allRound) this.aim = this.stepsOf(aim);
    const [nx, ny] = this.grid.counts;
    for (const [i, j, k] of this.goals) this.reach(i + nx * (j + ny * k), 0, i, j, k);
    this.isBegun = true;
  }

  private stepsOf(cell: number): Vec3 {
    const [nx, ny] = this.grid.counts;
    return [cell % nx, Math.floor(cell / nx) % ny, Math.floor(cell / (nx * ny))];
  }

  /** What it takes at least from a cell to the one that is worked towards, thirds of a cell. */
  private leftFrom(i: number, j: number, k: number): number {
    return this.aim === undefined ? 0 : thirdsBetween(this.aim, i, j, k);
  }

  /** Unit direction to where the way to the goals is after about `aheadMm` from a place that `at` was asked for; none at a goal. */
  leads(x: number, y: number, z: number, aheadMm: number): Vec3 | undefined {
    invariant(this.allRound, 'GoalDistance.leads: only what was worked out all round tells where the way leads');
    const from = cellAt(this.grid, x, y, z);
    let to = this.walked.get(from);
    if (to === undefined) {
      to = this.walkedFrom(from, aheadMm);
      this.walked.set(from, to);
    }
    const [nx, ny] = this.grid.counts;
    const dx = middle(this.grid, 0, to % nx) - x;
    const dy = middle(this.grid, 1, Math.floor(to / nx) % ny) - y;
    const dz = middle(this.grid, 2, Math.floor(to / (nx * ny))) - z;
    const size = lengthOf(dx, dy, dz);
    return to === from || size < this.grid.cellMm ? undefined : [dx / size, dy / size, dz / size];
  }

  /** The cell that is come to by going from each cell to its nearest neighbour. */
  private walkedFrom(from: number, aheadMm: number): number {
    const until = (this.thirds[from] as number) - (3 * aheadMm) / this.grid.cellMm;
    for (let node = from; ; ) {
      const next = this.nearestNeighbour(node);
      if (next === node || (this.thirds[next] as number) <= until) return next;
      node = next;
    }
  }

  private nearestNeighbour(node: number): number {
    const [nx, ny, nz] = this.grid.counts;
    const i = node % nx;
    const j = Math.floor(node / nx) % ny;
    const k = Math.floor(node / (nx * ny));
    let best = node;
    for (let c = Math.max(0, k - 1); c <= Math.min(nz - 1, k + 1); c++)
      for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++)
        for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
          const cell = a + nx * (b + ny * c);
          if (this.settled[cell] !== 0 && (this.thirds[cell] as number) < (this.thirds[best] as number)) best = cell;
        }
    return best;
  }

  private reach(cell: number, thirds: number, i: number, j: number, k: number): void {
    if (thirds >= (this.thirds[cell] as number)) return;
    this.thirds[cell] = thirds;
    const whole = thirds + this.leftFrom(i, j, k);
    while (this.waiting.length <= whole) this.waiting.push(undefined);
    let stack = this.waiting[whole];
    if (stack === undefined) {
      stack = new CellStack();
      this.waiting[whole] = stack;
    }
    stack.push(cell);
    this.waitingCells++;
  }

  /** The cell to be settled next; -1 when there is none. */
  private next(): number {
    while (this.waitingCells > 0) {
      const cell = this.waiting[this.bucket]?.pop() ?? -1;
      if (cell < 0) {
        this.waiting[this.bucket++] = undefined;
        continue;
      }
      this.waitingCells--;
      // What was reached by a shorter way since is settled already.
      if (this.settled[cell] === 0) return cell;
    }
    return -1;
  }

  private stateOf(cell: number, a: number, b: number, c: number): number {
    const { states, space, grid } = this;
    if (states[cell] === 0)
      states[cell] = this.judge(space, grid.cellMm, middle(grid, 0, a), middle(grid, 1, b), middle(grid, 2, c));
    return states[cell] as number;
  }

  private spread(node: number): void {
    const { grid, space, settled, thirds } = this;
    const here = thirds[node] as number;
    const [nx, ny, nz] = grid.counts;
    const i = node % nx;
    const j = Math.floor(node / nx) % ny;
    const k = Math.floor(node / (nx * ny));
    const isPluggedAnywhere = space.plugs.length > 0;
    const [lastA, lastB, lastC] = [Math.min(nx - 1, i + 1), Math.min(ny - 1, j + 1), Math.min(nz - 1, k + 1)];
    for (let c = Math.max(0, k - 1); c <= lastC; c++) {
      for (let b = Math.max(0, j - 1); b <= lastB; b++) {
        const row = nx * (b + ny * c);
        const sides = 2 + (c === k ? 0 : 1) + (b === j ? 0 : 1);
        for (let a = Math.max(0, i - 1); a <= lastA; a++) {
          const cell = row + a;
          if (settled[cell] !== 0) continue;
          const steps = sides + (a === i ? 0 : 1);
          // What is known to be as near already is not looked into.
          if (here + steps >= (thirds[cell] as number)) continue;
          const state = this.stateOf(cell, a, b, c);
          if (state === BLOCKED) continue;
          if (isPluggedAnywhere && isPlugged(space, middle(grid, 0, a), middle(grid, 1, b), middle(grid, 2, c)))
            continue;
          this.reach(cell, here + (state === DOUBTFUL ? DOUBTFUL_COST * steps : steps), a, b, c);
        }
      }
    }
  }
}

/** Cells that wait, the last one first; room for more is made as it is needed. */
class CellStack {
  private cells = new Int32Array(32);
  private count = 0;

  push(cell: number): void {
    if (this.count === this.cells.length) {
      const wider = new Int32Array(2 * this.count);
      wider.set(this.cells);
      this.cells = wider;
    }
    this.cells[this.count++] = cell;
  }

  /** The last cell; -1 when there is none. */
  pop(): number {
    return this.count === 0 ? -1 : (this.cells[--this.count] as number);
  }
}

const FAR = 2 ** 30;

/** What it takes from one cell to another where nothing is in the way, thirds of a cell. */
function thirdsBetween(from: Vec3, i: number, j: number, k: number): number {
  const a = Math.abs(i - from[0]);
  const b = Math.abs(j - from[1]);
  const c = Math.abs(k - from[2]);
  return 2 * Math.max(a, b, c) + a + b + c;
}

function judgedByMiddle(space: ClearSpace, cellMm: number, x: number, y: number, z: number): number {
  const { field, offsetMm } = space;
  const least = field.coarseMarginMm(x, y, z) + offsetMm;
  if (least >= 0) return CLEAR;
  const reach = mostFallMm(space, x, y, z, (cellMm * Math.sqrt(3)) / 2);
  const most = field.mostMarginMm(x, y, z) + offsetMm;
  if (most < 0 && least >= -reach) return DOUBTFUL;
  if (most < -reach) return BLOCKED;
  const margin = field.marginMm(x, y, z, -offsetMm) + offsetMm;
  return margin >= 0 ? CLEAR : margin >= -reach ? DOUBTFUL : BLOCKED;
}

function middle(grid: Grid, axis: 0 | 1 | 2, index: number): number {
  return grid.origin[axis] + (index + 0.5) * grid.cellMm;
}
