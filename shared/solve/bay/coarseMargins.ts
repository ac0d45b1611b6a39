import { type DistanceGrid, gridCellAt } from '../../geometry/distanceGrid.ts';

/** A skin's grid with the whole distance that one run keeps from it, mm. */
export interface KeptGrid {
  readonly grid: DistanceGrid;
  readonly wholeMm: number;
}

/**
 * Least over several skins of (lower bound on the distance - whole distance asked), cell by cell, so that one look
 * answers for all. All grids must have the same shape. Answers a look-up by point, mm; a point outside is answered by
 * the nearest cell, which is still a lower bound. Made once a run: one pass over the cells for each skin.
 */
export function coarseMargins(skins: readonly KeptGrid[], farMm: number): (x: number, y: number, z: number) => number {
  const first = skins[0];
  if (first === undefined) return () => farMm;
  const least = new Float32Array(first.grid.squaredGaps.length).fill(farMm);
  for (const { grid, wholeMm } of skins) lower(least, grid, wholeMm);
  return (x, y, z) => least[gridCellAt(first.grid, x, y, z)] as number;
}

function lower(least: Float32Array, grid: DistanceGrid, wholeMm: number): void {
  const { squaredGaps, cellMm } = grid;
  for (let i = 0; i < least.length; i++) {
    // Float32 rounds either way, and a lower bound may only be rounded down.
    const margin = Math.sqrt(squaredGaps[i] as number) * cellMm - wholeMm - ROUNDED_DOWN_MM;
    if (margin < (least[i] as number)) least[i] = margin;
  }
}

/** mm. More than float32 rounds a distance of up to 100 m by. */
const ROUNDED_DOWN_MM = 0.01;
