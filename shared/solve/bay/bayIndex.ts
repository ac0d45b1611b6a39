import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Skin } from '../../document/project/schema.ts';
import { sweepOfSkin } from '../../document/project/sweepOfSkin.ts';
import { type Box, boxOfMesh, growBox } from '../../geometry/box.ts';
import { type Bvh, buildBvh } from '../../geometry/bvh.ts';
import { buildDistanceGrid, type DistanceGrid } from '../../geometry/distanceGrid.ts';
import { withSweeps } from '../../geometry/sweep/withSweeps.ts';
import type { TriMesh } from '../../geometry/triMesh.ts';

/** mm. Cells of the coarse distance grid: 10 mm is small against any hose's bend and builds in a fraction of a second. */
const LEAST_CELL_MM = 10;
/** A bay so large that it would take more cells than this is given coarser ones: the grid only saves exact queries. */
const MOST_CELLS = 3e6;
/** mm. How far outside the scanned bay a hose may run: what was not scanned is not known to be free, and beyond a bend's reach of it nobody looked. */
const BEYOND_SCAN_MM = 150;
/** mm. How far the grids reach beyond the scan; their bounds hold outside too, only less tightly. */
const GRID_BEYOND_MM = 40;

/** One skin of the bay, ready to be asked for distances. */
export interface IndexedSkin {
  readonly skin: Skin;
  readonly bvh: Bvh;
  readonly grid: DistanceGrid;
}

/** The bay, ready to be asked: built once, shared by all runs. */
export interface BayIndex {
  readonly mesh: TriMesh;
  /** where hoses may run at all */
  readonly bounds: Box;
  readonly skins: readonly IndexedSkin[];
}

/** Groups the triangles by skin and indexes each. skinOf answers the skin of a part by its name. Skins without triangles are left out. What a moving skin sweeps is part of it. */
export function buildBayIndex(scan: TriMesh, skinOf: (partName: string) => Skin, watch: Watch): BayIndex {
  const mesh = withSweeps(scan, (part) => sweepOfSkin(skinOf(part)));
  const groups = new Map<string, { skin: Skin; triangles: number[] }>();
  for (const part of mesh.parts) {
    const skin = skinOf(part.name);
    const group = groups.get(skin.id) ?? { skin, triangles: [] };
    groups.set(skin.id, group);
    for (let i = 0; i < part.triangleCount; i++) group.triangles.push(part.firstTriangle + i);
  }
  const scanned = boxOfMesh(mesh);
  const gridBox = growBox(scanned, GRID_BEYOND_MM);
  const cellMm = Math.max(LEAST_CELL_MM, Math.cbrt(volumeOf(gridBox) / MOST_CELLS));
  const skins: IndexedSkin[] = [];
  for (const { skin, triangles } of groups.values()) {
    stopIfCancelled(watch);
    if (triangles.length === 0) continue;
    const chosen = Uint32Array.from(triangles);
    watch.report({ fraction: skins.length / groups.size, doing: `indexing skin ${skin.name}` });
    skins.push({ skin, bvh: buildBvh(mesh, chosen), grid: buildDistanceGrid(mesh, chosen, gridBox, cellMm) });
  }
  return { mesh, bounds: growBox(scanned, BEYOND_SCAN_MM), skins };
}

function volumeOf({ min, max }: Box): number {
  return (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
}
