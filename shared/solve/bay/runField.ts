import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Box } from '../../geometry/box.ts';
import { nearestDistance } from '../../geometry/bvh.ts';
import { gridLowerBound } from '../../geometry/distanceGrid.ts';
import type { BayIndex, IndexedSkin } from './bayIndex.ts';
import { nearestTube, newNearestTube, type TubeField } from './tubeField.ts';

/**
 * The own-port rule. A run must start at its port, and the port stands on the bay. So near its own two seats the
 * distance asked of the centreline is cut to OWN_PORT_SLOPE times the distance from the seat: a cone of 30 degrees
 * about any line that leaves the seat. Away from the seats (beyond asked distance / OWN_PORT_SLOPE) the whole distance
 * is asked. The same rule holds against other runs, whose ports may be neighbours.
 */
export const OWN_PORT_SLOPE = 0.5;

/** What one run must keep from everything else, centreline to surface, mm. */
export interface RunKeeps {
  /** by skin id: hose radius + clearance + scan uncertainty */
  readonly skinMm: ReadonlyMap<string, number>;
  /** from the surface of other runs: hose radius + spacing */
  readonly tubeMm: number;
  readonly seats: readonly [Vec3, Vec3];
}

/**
 * Where the centreline of one run may go: margin = least over everything of (distance - distance asked there), mm.
 * Satisfies the search's ClearanceField. Margins change at most 1 + OWN_PORT_SLOPE mm per mm moved.
 */
export interface RunField {
  readonly bounds: Box;
  readonly lipschitz: number;
  coarseMarginMm(x: number, y: number, z: number): number;
  marginMm(x: number, y: number, z: number, upToMm: number): number;
}

/** The distance asked of a centreline point, the own-port rule included. wholeMm: what is asked away from ports. */
export function askedDistanceMm(wholeMm: number, seats: readonly [Vec3, Vec3], point: Vec3): number {
  const near = Math.min(distance(point, seats[0]), distance(point, seats[1]));
  return Math.min(wholeMm, OWN_PORT_SLOPE * near);
}

export function buildRunField(bay: BayIndex, tubes: TubeField, keeps: RunKeeps): RunField {
  const skins: { skin: IndexedSkin; wholeMm: number }[] = bay.skins
    .map((skin) => ({ skin, wholeMm: keeps.skinMm.get(skin.skin.id) ?? 0 }))
    .sort((a, b) => b.wholeMm - a.wholeMm);
  const found = newNearestTube();
  const slopeReach = (x: number, y: number, z: number): number => {
    const [a, b] = keeps.seats;
    const toA = Math.hypot(x - a[0], y - a[1], z - a[2]);
    const toB = Math.hypot(x - b[0], y - b[1], z - b[2]);
    return OWN_PORT_SLOPE * Math.min(toA, toB);
  };
  const tubeMargin = (x: number, y: number, z: number, most: number, reach: number): number => {
    const asked = Math.min(keeps.tubeMm, reach);
    return nearestTube(tubes, x, y, z, asked + most, found) ? found.gapMm - asked : most;
  };
  return {
    bounds: bay.bounds,
    lipschitz: 1 + OWN_PORT_SLOPE,
    coarseMarginMm(x, y, z) {
      const reach = slopeReach(x, y, z);
      let least = FAR_MM;
      for (const { skin, wholeMm } of skins)
        least = Math.min(least, gridLowerBound(skin.grid, x, y, z) - Math.min(wholeMm, reach));
      return tubeMargin(x, y, z, least, reach);
    },
    marginMm(x, y, z, upToMm) {
      const reach = slopeReach(x, y, z);
      let least = tubeMargin(x, y, z, upToMm, reach);
      for (const { skin, wholeMm } of skins) {
        const asked = Math.min(wholeMm, reach);
        if (gridLowerBound(skin.grid, x, y, z) - asked >= least) continue;
        const d = nearestDistance(skin.bvh, x, y, z, asked + least);
        if (d - asked < least) least = d - asked;
      }
      return least;
    },
  };
}

/** mm. Stands for "nothing near": larger than any bay. */
const FAR_MM = 1e6;
