import { newFloats, Sparse } from '../../base/sparse.ts';
import type { Box } from '../../geometry/box.ts';

/** mm. Cells small against the clearances that are asked, so that most places are told clear or not by their cell's middle. */
const CELL_MM = 10;
/** A bay so large that it would take more cells than this is given coarser ones. */
const MOST_CELLS = 4e6;
/** mm. Distances are told up to this: nobody asks for more. */
const REACH_MM = 60;
/** mm. More than float32 rounds a distance of up to `REACH_MM` by, and float64 one of a bay. */
const ROUNDED_MM = 1e-4;
/** Kept in place of 0, which stands for a cell that was not yet asked. */
const NEXT_TO_ZERO_MM = 1e-30;

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
  private readonly kept = new Sparse(newFloats, 4);
  private readonly askDistance: AskDistance;

  /** Places outside the box are bounded too, less tightly. */
  constructor({ min, max }: Box, askDistance: AskDistance) {
    const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]] as const;
    const cellMm = Math.max(CELL_MM, Math.cbrt((size[0] * size[1] * size[2]) / MOST_CELLS));
    const count = (mm: number): number => Math.max(1, Math.ceil(mm / cellMm));
    this.origin = min;
    this.cellMm = cellMm;
    this.counts = [count(size[0]), count(size[1]), count(size[2])];
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
    const at = this.kept.at(i + counts[0] * (j + counts[1] * k));
    const mm = (this.kept.numbers[at] as number) || this.ask(at, mx, my, mz);
    const away = Math.sqrt((x - mx) ** 2 + (y - my) ** 2 + (z - mz) ** 2) + ROUNDED_MM;
    out.leastMm = mm - away;
    out.mostMm = mm < REACH_MM ? mm + away : Number.POSITIVE_INFINITY;
  }

  private ask(at: number, x: number, y: number, z: number): number {
    const mm = Math.min(this.askDistance(x, y, z, REACH_MM), REACH_MM);
    const { numbers } = this.kept;
    numbers[at] = mm === 0 ? NEXT_TO_ZERO_MM : mm;
    return numbers[at] as number;
  }
}

function clamped(steps: number, count: number): number {
  return steps < 0 ? 0 : steps >= count ? count - 1 : Math.floor(steps);
}
