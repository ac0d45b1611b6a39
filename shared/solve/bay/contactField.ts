import type { Vec3 } from '../../base/vec3.ts';
import { nearestPoint, newNearest } from '../../geometry/bvh.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import type { BayIndex } from './bayIndex.ts';
import type { DistanceBounds } from './keptDistances.ts';
import { askedDistanceMm } from './runField.ts';
import { skinDistances } from './skinDistances.ts';
import { nearestTube, newNearestTube, type TubeField } from './tubeField.ts';

/** mm. Beyond this a hose touches nothing on this step of its relaxation; further things are answered as this far. */
const REACH_MM = 25;

/**
 * What a hose of the given outside radius may come to lie against: every surface of the bay and every other run. Gaps
 * are exact up to 25 mm; the rule of held places keeps the mouth from being pushed off its own port.
 */
export function buildContactField(
  bay: BayIndex,
  tubes: TubeField,
  outsideRadiusMm: number,
  held: readonly Vec3[],
): ContactField {
  const near = newNearest();
  const tube = newNearestTube();
  const skins = bay.skins.map(skinDistances);
  const about: DistanceBounds = { leastMm: 0, mostMm: 0 };
  return {
    gapAt(x, y, z, out) {
      const radius = askedDistanceMm(outsideRadiusMm, held, [x, y, z]);
      let reach = radius + REACH_MM;
      let px = Number.NaN;
      let py = Number.NaN;
      let pz = Number.NaN;
      for (const { bvh, kept } of skins) {
        kept.bound(x, y, z, about);
        if (about.leastMm >= reach) continue;
        if (!nearestPoint(bvh, x, y, z, Math.min(reach, about.mostMm), near)) continue;
        reach = near.distanceMm;
        px = near.x;
        py = near.y;
        pz = near.z;
      }
      if (nearestTube(tubes, x, y, z, reach, tube)) {
        reach = tube.gapMm;
        px = tube.x;
        py = tube.y;
        pz = tube.z;
      }
      out.gapMm = reach - radius;
      const away = Math.hypot(x - px, y - py, z - pz);
      const scale = away > 0 ? 1 / away : 0;
      out.nx = away > 0 ? (x - px) * scale : 0;
      out.ny = away > 0 ? (y - py) * scale : 0;
      out.nz = away > 0 ? (z - pz) * scale : 1;
    },
  };
}
