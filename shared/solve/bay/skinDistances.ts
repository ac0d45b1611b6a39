import type { Box } from '../../geometry/box.ts';
import { type Bvh, nearestDistance } from '../../geometry/bvh.ts';
import { type DistanceGrid, gridLowerBound } from '../../geometry/distanceGrid.ts';
import type { IndexedSkin } from './bayIndex.ts';
import { KeptDistances } from './keptDistances.ts';

/** A skin's exact distances and those already known; these live as long as the skin's index. */
export interface SkinDistances {
  readonly bvh: Bvh;
  readonly kept: KeptDistances;
}

const known = new WeakMap<Bvh, KeptDistances>();

/** What is known of the distances to a skin, shared by all who ask. */
export function skinDistances({ bvh, grid }: IndexedSkin): SkinDistances {
  const kept = known.get(bvh) ?? new KeptDistances(boxOf(grid), askedOnlyNear(bvh, grid));
  known.set(bvh, kept);
  return { bvh, kept };
}

function askedOnlyNear(bvh: Bvh, grid: DistanceGrid): (x: number, y: number, z: number, upToMm: number) => number {
  return (x, y, z, upToMm) =>
    gridLowerBound(grid, x, y, z) >= upToMm ? upToMm : nearestDistance(bvh, x, y, z, upToMm);
}

function boxOf({ minX, minY, minZ, cellMm, nx, ny, nz }: DistanceGrid): Box {
  return { min: [minX, minY, minZ], max: [minX + nx * cellMm, minY + ny * cellMm, minZ + nz * cellMm] };
}
