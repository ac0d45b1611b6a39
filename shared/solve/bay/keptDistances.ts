import { NEXT_TO_ZERO_MM, newFloats, SparseNumbers } from '../../base/sparseNumbers.ts';
import type { Box } from '../../geometry/box.ts';

/** mm. Cells small against the clearances that are asked, so that most places are told clear or not by their cell's middle. */
const CELL_MM = 10;
/** A bay so large that it would take more cells than this is given coarser ones. */
const MOST_CELLS = 4e6;
/** mm. Distances are told up to this: nobody asks for more. */
const REACH_MM = 60;
/** mm. More than float32 rounds a distance of up to `REACH_MM` by, and float64 one of a bay. */
const ROUNDED_MM = 1e-4;
/** Cells a block has along each axis: where a whole block is out of reach, which most of a bay is, none of its cells is asked. */
const BLOCK_BITS = 2;
const BLOCK_CELLS = 1 << BLOCK_BITS;
/** What is known of a block; 0 = not yet asked. */
const IN_REACH = 1;
const OUT_OF_REACH = 2;

/** An exact distance, mm; any value of at least upToMm where it is at least that. It may be negative: inside of a thing. */
type AskDistance = (x: number, y: number, z: number, upToMm: number) => number;

/** mm. The distance is not less than `leastMm` and not more than `mostMm`, which may be Infinity. */
export interface DistanceBounds {
  leastMm: number;
  mostMm: number;
}

/**
 * Distances to one thing, exact at the middles of the cells of a grid, asked when first wanted and kept. A distance changes by
 * no more than the way moved, so each bounds those of all places near it, and most questions need no exact answer.
 * What is answered does not depend on what was asked before.
 */
export class KeptDistances {
  private readonly origin: Box['min'];
  private readonly cellMm: number;
  private readonly counts: readonly [number, number, number];
  private readonly blocks: Uint8Array;
  private readonly blockCounts: readonly [number, number, number];
  private readonly kept = new SparseNumbers(newFloats, 4);
  private readonly askDistance: AskDistance;

  /** Places outside the box are bounded too, less tightly. */
  constructor({ min, max }: Box, askDistance: AskDistance) {
    const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]] as const;
    const cellMm = Math.max(CELL_MM, Math.cbrt((size[0] * size[1] * size[2]) / MOST_CELLS));
    const count = (mm: number): number => Math.max(1, Math.ceil(mm / cellMm));
    this.origin = min;
    this.cellMm = cellMm;
    this.counts = [count(size[0]), count(size[1]), count(size[2])];
    const blocks = (cells: number): number => Math.ceil(cells / BLOCK_CELLS);
    this.blockCounts = [blocks(this.counts[0]), blocks(this.counts[1]), blocks(this.counts[2])];
    this.blocks = new Uint8Array(this.blockCounts[0] * this.blockCounts[1] * this.blockCounts[2]);
    this.askDistance = askDistance;
  }

  /** Bounds on the distance from a place, mm, written to `out`. */
  bound(x: number, y: number, z: number, out: DistanceBounds): void {
    const { cellMm, counts, origin } = this;
    const i = clamped((x - origin[0]) / cellMm, counts[0]);
    const j = clamped((y - origin[1]) / cellMm, counts[1]);
    const k = clamped((z - origin[2]) / cellMm, counts[2]);
    const mx = origin[0] + (i + 0.5) * cellMm;
    const my = origin[1] + (j + 0.5) * cellMm;
    const mz = origin[2] + (k + 0.5) * cellMm;
    const mm = this.isOutOfReach(i, j, k) ? REACH_MM : this.atMiddle(i + counts[0] * (j + counts[1] * k), mx, my, mz);
    const away = Math.sqrt((x - mx) ** 2 + (y - my) ** 2 + (z - mz) ** 2) + ROUNDED_MM;
    out.leastMm = mm - away;
    out.mostMm = mm < REACH_MM ? mm + away : Number.POSITIVE_INFINITY;
  }

  /** Whether every place of the block that a cell lies in is further off than is told. */
  private isOutOfReach(i: number, j: number, k: number): boolean {
    const { blockCounts } = this;
    const [a, b, c] = [i >> BLOCK_BITS, j >> BLOCK_BITS, k >> BLOCK_BITS];
    const block = a + blockCounts[0] * (b + blockCounts[1] * c);
    if (this.blocks[block] === 0) this.blocks[block] = this.askBlock(a, b, c);
    return this.blocks[block] === OUT_OF_REACH;
  }

  private askBlock(a: number, b: number, c: number): number {
    const { origin, cellMm } = this;
    const edgeMm = BLOCK_CELLS * cellMm;
    const upToMm = REACH_MM + (edgeMm * Math.sqrt(3)) / 2 + ROUNDED_MM;
    const mm = this.askDistance(
      origin[0] + (a + 0.5) * edgeMm,
      origin[1] + (b + 0.5) * edgeMm,
      origin[2] + (c + 0.5) * edgeMm,
      upToMm,
    );
    return mm >= upToMm ? OUT_OF_REACH : IN_REACH;
  }

  /** The distance at the middle of a cell, mm, at most `REACH_MM`. */
  private atMiddle(cell: number, x: number, y: number, z: number): number {
    const at = this.kept.placeFor(cell);
    const { numbers } = this.kept;
    if (numbers[at] === 0) {
      const mm = Math.min(this.askDistance(x, y, z, REACH_MM), REACH_MM);
      numbers[at] = mm === 0 ? NEXT_TO_ZERO_MM : mm;
    }
    return numbers[at] as number;
  }
}

function clamped(steps: number, count: number): number {
  return steps < 0 ? 0 : steps >= count ? count - 1 : Math.floor(steps);
}
