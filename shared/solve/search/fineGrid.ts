import { NEXT_TO_ZERO_MM, newFloats, SparseNumbers } from '../../base/sparseNumbers.ts';
import { type ClearSpace, marginUpTo } from './clearSpace.ts';
import { type Grid, gridOver } from './goalDistance.ts';

/** A bay so large that it would take more cells than this is given coarser ones. */
const MOST_CELLS = 8e6;
/** mm. Margins are told up to this. */
export const ROOMY_MM = 8;

/** A fine grid over a field with the margins at the middles of its cells, asked when first wanted and kept. */
export class FineGrid {
  readonly grid: Grid;
  private readonly space: ClearSpace;
  /** 0 = not yet asked */
  private readonly margins = new SparseNumbers(newFloats, 5);

  constructor(space: ClearSpace, cellMm: number) {
    const { min, max } = space.field.bounds;
    const volume = (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
    this.space = space;
    this.grid = gridOver(space.field.bounds, Math.max(cellMm, Math.cbrt(volume / MOST_CELLS)));
  }

  /** Coordinate of the middle of the cells numbered `index` along an axis, mm. */
  middle(axis: 0 | 1 | 2, index: number): number {
    return this.grid.origin[axis] + (index + 0.5) * this.grid.cellMm;
  }

  /** Margin at the middle of a cell, mm; what is more than ROOMY_MM may be told as less, but not as less than that. */
  marginMm(cell: number, x: number, y: number, z: number): number {
    const at = this.margins.placeFor(cell);
    const { numbers } = this.margins;
    const known = numbers[at] as number;
    if (known !== 0) return known;
    const margin = marginUpTo(this.space, x, y, z, ROOMY_MM);
    numbers[at] = margin === 0 ? NEXT_TO_ZERO_MM : margin;
    return margin;
  }
}
