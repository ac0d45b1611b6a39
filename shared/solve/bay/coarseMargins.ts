import { newFloats, SparseNumbers } from '../../base/sparseNumbers.ts';
import { type DistanceGrid, gridCellAt } from '../../geometry/distanceGrid.ts';

/** A skin's grid with the whole distance that one run keeps from it, mm. */
export interface KeptGrid {
  readonly grid: DistanceGrid;
  readonly wholeMm: number;
}

/**
 * Least over several skins of (lower bound on the distance - whole distance asked), cell by cell, so that one look
 * answers for all. All grids must have the same shape. Answers a look-up by point, mm; a point outside is answered by
 * the nearest cell, which is still a lower bound. A cell is worked out when it is first asked for, and kept.
 */
export function coarseMargins(skins: readonly KeptGrid[], farMm: number): (x: number, y: number, z: number) => number {
  const first = skins[0];
  if (first === undefined) return () => farMm;
  const kept = new SparseNumbers(newFloats, 4);
  return (x, y, z) => {
    const cell = gridCellAt(first.grid, x, y, z);
    const at = kept.placeFor(cell);
    const { numbers } = kept;
    if (numbers[at] === 0) numbers[at] = leastAt(skins, cell, farMm);
    return numbers[at] as number;
  };
}

/** Never 0, which stands for a cell that was not yet asked. */
function leastAt(skins: readonly KeptGrid[], cell: number, farMm: number): number {
  let least = farMm;
  for (const { grid, wholeMm } of skins) {
    const { squaredGaps, cellMm } = grid;
    // Float32 rounds either way, and a lower bound may only be rounded down.
    least = Math.min(least, Math.sqrt(squaredGaps[cell] as number) * cellMm - wholeMm - ROUNDED_DOWN_MM);
  }
  return least === 0 ? -ROUNDED_DOWN_MM : least;
}

/** mm. More than float32 rounds a distance of up to 100 m by. */
const ROUNDED_DOWN_MM = 0.01;
