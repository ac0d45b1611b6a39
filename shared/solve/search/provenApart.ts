import { newIntegers, SparseNumbers } from '../../base/sparseNumbers.ts';
import { distance, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { type ClearSpace, marginUpTo, mostFallMm } from './clearSpace.ts';
import { FineGrid } from './fineGrid.ts';
import { cellAt } from './goalDistance.ts';
import { NodeQueue } from './nodeQueue.ts';

/**
 * Cells, mm, how often one that may hold a clear place is halved to see whether it does, down to about 1 mm, and how many are opened
 * from either side before the question is given up. Large ones are soon through a large place, but let the question
 * through a sheet where they hold clear places on both of its sides; small ones are small against what any hose keeps all round.
 */
const LEVELS = [
  { cellMm: 18, halvings: 4, mostCells: 150_000 },
  { cellMm: 10, halvings: 3, mostCells: 120_000 },
] as const;
type Level = (typeof LEVELS)[number];
const CELLS_BETWEEN_CANCEL_CHECKS = 256;

/**
 * Whether starts and goals lie in places that nothing joins, however it bends: a proof, for runs that cannot be laid are mostly of
 * this kind and a search would look for long. Method: cells that are not surely blocked are opened from both sides by turns, towards
 * the other side, those with a blocked middle only where their parts are not surely blocked too; where the smaller of the two
 * places runs out, the ends are apart. In the open the two meet after a few cells. A gap is told to be shut where it lacks about
 * 2 mm or more; what is not proven within a budget of cells counts as joined.
 */
export function provenApart(space: ClearSpace, starts: readonly Vec3[], goals: readonly Vec3[], watch: Watch): boolean {
  return LEVELS.some((level) => areApart(space, level, starts, goals, watch));
}

function areApart(
  space: ClearSpace,
  level: Level,
  starts: readonly Vec3[],
  goals: readonly Vec3[],
  watch: Watch,
): boolean {
  const cells = new Cells(space, level);
  const sides = [new Side(cells, starts, goals, MARKS[0]), new Side(cells, goals, starts, MARKS[1])] as const;
  for (let opened = 0; opened < 2 * level.mostCells; opened++) {
    if (opened % CELLS_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
    const step = sides[opened % 2 === 0 ? 0 : 1].open();
    if (step !== 'on') return step === 'empty';
  }
  return false;
}

/**
 * Whether a cell may hold a clear place, by its middle's margin and then by its parts, halved as often as asked, those that are
 * nearest to clear first.
 */
function mayHoldClear(space: ClearSpace, [x, y, z]: Vec3, edgeMm: number, marginMm: number, halvings: number): boolean {
  if (marginMm >= 0) return true;
  if (marginMm < -mostFallMm(space, x, y, z, (edgeMm * Math.sqrt(3)) / 2)) return false;
  if (halvings === 0) return true;
  const parts = PARTS.map(([i, j, k]) => {
    const part: Vec3 = [x + (i * edgeMm) / 4, y + (j * edgeMm) / 4, z + (k * edgeMm) / 4];
    return { part, partMm: marginUpTo(space, ...part, 0) };
  }).sort((p, q) => q.partMm - p.partMm);
  return parts.some(({ part, partMm }) => mayHoldClear(space, part, edgeMm / 2, partMm, halvings - 1));
}

const PARTS = [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k) => [i, j, k] as const)));

/** Whose cells are whose: each side has a mark, both together where both begin; or nobody's, since it holds no clear place. */
const MARKS = [1, 2] as const;
const BOTH = 3;
const SHUT = 4;

/** The cells of a level, with what is known of them. */
class Cells {
  readonly fine: FineGrid;
  private readonly owners = new SparseNumbers(newIntegers, 5);
  private readonly space: ClearSpace;
  private readonly halvings: number;

  constructor(space: ClearSpace, { cellMm, halvings }: Level) {
    this.space = space;
    this.halvings = halvings;
    this.fine = new FineGrid(space, cellMm);
  }

  /** Marks of a cell; 0 = none. */
  ownerOf(cell: number): number {
    const at = this.owners.placeFor(cell);
    return this.owners.numbers[at] as number;
  }

  /** Marks a cell. */
  give(cell: number, owner: number): void {
    const at = this.owners.placeFor(cell);
    this.owners.numbers[at] = owner;
  }

  /** Whether a cell may hold a clear place, by its middle alone. */
  isLikelyOpen(cell: number, middle: Vec3): boolean {
    const { fine, space } = this;
    return fine.marginMm(cell, ...middle) >= -mostFallMm(space, ...middle, (fine.grid.cellMm * Math.sqrt(3)) / 2);
  }

  /** Whether a cell may hold a clear place, by its parts too; one that holds none is shut. */
  isOpen(cell: number, middle: Vec3): boolean {
    const { fine, space, halvings } = this;
    if (this.ownerOf(cell) === SHUT) return false;
    if (mayHoldClear(space, middle, fine.grid.cellMm, fine.marginMm(cell, ...middle), halvings)) return true;
    this.give(cell, SHUT);
    return false;
  }
}

class Side {
  private readonly queue = new NodeQueue();
  private readonly cells: Cells;
  private readonly towards: Vec3;
  private readonly mark: number;

  constructor(cells: Cells, from: readonly Vec3[], to: readonly Vec3[], mark: number) {
    this.cells = cells;
    this.towards = to[0] as Vec3;
    this.mark = mark;
    for (const [x, y, z] of from) {
      const cell = cellAt(cells.fine.grid, x, y, z);
      cells.give(cell, cells.ownerOf(cell) | mark);
      this.queue.push(0, cell);
    }
  }

  /** Opens the cell nearest to the other side. */
  open(): 'met' | 'empty' | 'on' {
    const cell = this.queue.pop();
    if (cell < 0) return 'empty';
    const { cells, mark } = this;
    const { fine } = cells;
    if (cells.ownerOf(cell) === BOTH) return 'met';
    const [nx, ny, nz] = fine.grid.counts;
    const i = cell % nx;
    const j = Math.floor(cell / nx) % ny;
    const k = Math.floor(cell / (nx * ny));
    if (!cells.isOpen(cell, [fine.middle(0, i), fine.middle(1, j), fine.middle(2, k)])) return 'on';
    for (let c = Math.max(0, k - 1); c <= Math.min(nz - 1, k + 1); c++)
      for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++)
        for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
          const next = a + nx * (b + ny * c);
          const known = cells.ownerOf(next);
          if (known === mark || known === SHUT) continue;
          const middle: Vec3 = [fine.middle(0, a), fine.middle(1, b), fine.middle(2, c)];
          if (!cells.isLikelyOpen(next, middle)) continue;
          if (known === 0) {
            cells.give(next, mark);
            this.queue.push(distance(middle, this.towards), next);
          } else if (cells.isOpen(next, middle)) return 'met';
        }
    return 'on';
  }
}
