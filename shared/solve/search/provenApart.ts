import type { Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { ClearSpace } from './clearSpace.ts';
import { FineGrid } from './fineGrid.ts';
import { cellAt } from './goalDistance.ts';
import { NodeQueue } from './nodeQueue.ts';

/**
 * Cells, mm, and how many of them are opened from either side before the question is given up: coarse ones tell thick walls soon,
 * fine ones keep a thin sheet shut for a hose that keeps 11 mm and more (in a bay of over 2 m3, coarser cells for wider hoses).
 */
const LEVELS = [
  { cellMm: 18, mostCells: 40_000 },
  { cellMm: 6, mostCells: 350_000 },
] as const;
const CELLS_BETWEEN_CANCEL_CHECKS = 4096;

/**
 * Whether starts and goals lie in places that nothing joins, however it bends: a proof, for runs that cannot be laid are mostly of
 * this kind and a search would look for long. Method: cells that are not surely blocked are opened from both sides by
 * turns, towards the other side; where the smaller of the two places runs out, the ends are apart. In the open the two
 * meet after a few cells. What is not proven within a budget of cells counts as joined.
 */
export function provenApart(space: ClearSpace, starts: readonly Vec3[], goals: readonly Vec3[], watch: Watch): boolean {
  return LEVELS.some(({ cellMm, mostCells }) => areApart(new FineGrid(space, cellMm), starts, goals, mostCells, watch));
}

function areApart(
  fine: FineGrid,
  starts: readonly Vec3[],
  goals: readonly Vec3[],
  mostCells: number,
  watch: Watch,
): boolean {
  const sides = [new Side(fine, starts, goals, 1), new Side(fine, goals, starts, 2)] as const;
  const owner = new Uint8Array(fine.cells);
  for (const side of sides) side.begin(owner);
  for (let cells = 0; cells < 2 * mostCells; cells++) {
    if (cells % CELLS_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
    const step = sides[cells % 2 === 0 ? 0 : 1].open(owner);
    if (step !== 'on') return step === 'empty';
  }
  return false;
}

class Side {
  private readonly queue = new NodeQueue();
  private readonly fine: FineGrid;
  private readonly from: readonly Vec3[];
  private readonly towards: Vec3;
  private readonly mark: number;

  constructor(fine: FineGrid, from: readonly Vec3[], to: readonly Vec3[], mark: number) {
    this.fine = fine;
    this.from = from;
    this.towards = to[0] as Vec3;
    this.mark = mark;
  }

  begin(owner: Uint8Array): void {
    for (const [x, y, z] of this.from) {
      const cell = cellAt(this.fine.grid, x, y, z);
      owner[cell] = (owner[cell] as number) | this.mark;
      this.queue.push(0, cell);
    }
  }

  /** Opens the cell nearest to the other side. */
  open(owner: Uint8Array): 'met' | 'empty' | 'on' {
    const cell = this.queue.pop();
    if (cell < 0) return 'empty';
    if (owner[cell] === 3) return 'met';
    const { fine, mark } = this;
    const [nx, ny, nz] = fine.grid.counts;
    const i = cell % nx;
    const j = Math.floor(cell / nx) % ny;
    const k = Math.floor(cell / (nx * ny));
    for (let c = Math.max(0, k - 1); c <= Math.min(nz - 1, k + 1); c++)
      for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++)
        for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) {
          const next = a + nx * (b + ny * c);
          const known = owner[next] as number;
          if (known === mark) continue;
          const [x, y, z] = [fine.middle(0, a), fine.middle(1, b), fine.middle(2, c)];
          if (fine.marginMm(next, x, y, z) < -fine.reachMm) continue;
          if (known !== 0) return 'met';
          owner[next] = mark;
          this.queue.push(Math.hypot(x - this.towards[0], y - this.towards[1], z - this.towards[2]), next);
        }
    return 'on';
  }
}
