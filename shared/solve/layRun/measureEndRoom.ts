import { distance, lerp } from '../../base/vec3.ts';
import type { EndPose } from '../../document/lay/schema.ts';
import { nearestPoint, newNearest } from '../../geometry/bvh.ts';
import { partOfTriangle } from '../../geometry/triMesh.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { askedDistanceMm } from '../bay/runField.ts';
import { type EndSetting, fittedAt } from './runSetting.ts';

/** mm. Spacing of the places along an end: a fraction of any collar. */
const STEP_MM = 2;
/** mm. More room than this round an end is not told. */
const REACH_MM = 60;

/**
 * Least room round a fitted end, mm, from its bend to its mouth, taken at its collar's radius all along (the tube of an
 * angled end is thinner, so this is the safe side): distance to the bay less that radius, less near the end's own seat by
 * the rule of held places. Looked at every 2 mm. Nothing where there is room to spare.
 */
export function measureEndRoom(setting: EndSetting, clockRad: number, bay: BayIndex): EndPose['room'] {
  const { bendPoint, mouthPoint, seatPoint } = fittedAt(setting, clockRad);
  const steps = Math.max(1, Math.ceil(distance(bendPoint, mouthPoint) / STEP_MM));
  const near = newNearest();
  let least: EndPose['room'];
  for (let i = 0; i <= steps; i++) {
    const point = lerp(bendPoint, mouthPoint, i / steps);
    const asked = askedDistanceMm(setting.end.collarDiameterMm / 2, [seatPoint], point);
    for (const { bvh } of bay.skins) {
      if (!nearestPoint(bvh, point[0], point[1], point[2], asked + (least?.roomMm ?? REACH_MM), near)) continue;
      const part = partOfTriangle(bay.mesh, near.triangle).name;
      least = { roomMm: near.distanceMm - asked, part, point: [point[0], point[1], point[2]] };
    }
  }
  return least;
}
