import { bvhBytes } from '../geometry/bvh.ts';
import type { BayIndex } from '../solve/bay/bayIndex.ts';

/** The same bay with its numbers in memory that workers share, so that sending it costs nothing. Copies each array once. */
export function inSharedMemory({ mesh, bounds, skins }: BayIndex): BayIndex {
  return {
    mesh: { ...mesh, positions: shared(mesh.positions), indices: shared(mesh.indices) },
    bounds,
    skins: skins.map(({ skin, bvh, grid }) => ({
      skin,
      bvh: {
        ...bvh,
        boxes: shared(bvh.boxes),
        children: shared(bvh.children),
        corners: shared(bvh.corners),
        triangles: shared(bvh.triangles),
      },
      grid: { ...grid, squaredGaps: shared(grid.squaredGaps) },
    })),
  };
}

/** Bytes that a bay holds, for a memory budget. */
export function bayBytes({ mesh, skins }: BayIndex): number {
  return skins.reduce(
    (sum, { bvh, grid }) => sum + bvhBytes(bvh) + grid.squaredGaps.byteLength,
    mesh.positions.byteLength + mesh.indices.byteLength,
  );
}

function shared<T extends Float32Array | Int32Array | Uint32Array>(numbers: T): T {
  const Numbers = numbers.constructor as new (buffer: SharedArrayBuffer) => T;
  const copy = new Numbers(new SharedArrayBuffer(numbers.byteLength));
  copy.set(numbers);
  return copy;
}
