import type { Vec3 } from '../../base/vec3.ts';
import { cellAt, type Grid } from './goalDistance.ts';
import { NodeQueue } from './nodeQueue.ts';

interface Cell {
  readonly number: number;
  /** newest last */
  readonly nodes: number[];
  /** how many came out */
  seen: number;
  isQueued: boolean;
}

/**
 * Numbered nodes by the cell of a grid that they lie in: the next comes from the cell that fewest came from, the newest of it. A
 * search that takes some of its nodes from here is not held up where what leads it is wrong, and soon has been everywhere.
 */
export class LeastSeen {
  private readonly grid: Grid;
  private readonly byPlace = new Map<number, Cell>();
  private readonly cells: Cell[] = [];
  private readonly queue = new NodeQueue();

  constructor(grid: Grid) {
    this.grid = grid;
  }

  add(node: number, place: Vec3): void {
    const at = cellAt(this.grid, ...place);
    let cell = this.byPlace.get(at);
    if (cell === undefined) {
      cell = { number: this.cells.length, nodes: [], seen: 0, isQueued: false };
      this.byPlace.set(at, cell);
      this.cells.push(cell);
    }
    cell.nodes.push(node);
    if (!cell.isQueued) this.enqueue(cell);
  }

  /** The next node that is open, those that are not are thrown away; -1 when there is none. */
  pop(isOpen: (node: number) => boolean): number {
    for (let number = this.queue.pop(); number >= 0; number = this.queue.pop()) {
      const cell = this.cells[number] as Cell;
      cell.isQueued = false;
      for (let node = cell.nodes.pop(); node !== undefined; node = cell.nodes.pop()) {
        if (!isOpen(node)) continue;
        cell.seen++;
        if (cell.nodes.length > 0) this.enqueue(cell);
        return node;
      }
    }
    return -1;
  }

  private enqueue(cell: Cell): void {
    cell.isQueued = true;
    this.queue.push(cell.seen, cell.number);
  }
}
