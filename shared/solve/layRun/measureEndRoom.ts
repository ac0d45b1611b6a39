import type { Vec3 } from '../../base/vec3.ts';
import type { EndPose } from '../../document/lay/schema.ts';
import { nearestPoint, newNearest } from '../../geometry/bvh.ts';
import { partOfTriangle } from '../../geometry/triMesh.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { askedDistanceMm } from '../bay/runField.ts';
import { placesAlong } from '../ends/placesAlong.ts';
import { type EndSetting, fittedAt } from './runSetting.ts';

/** mm. Spacing of the places along an end: a fraction of any collar. */
const STEP_MM = 2;
/** mm. More room than this round an end is not told. */
const REACH_MM = 60;

type Room = NonNullable<EndPose['room']>;

/**
 * Least room round a fitted end, mm, from its bend to its mouth, taken at its collar's radius all along (the tube of an
 * angled end is thinner, so this is the safe side), and round the adapters under it, from seat to seat at their own:
 * distance to the bay less that radius, less near the seats of end and port by the rule of held places. Looked at every 2 mm.
 * Nothing where there is room to spare.
 */
export function measureEndRoom(setting: EndSetting, clockRad: number, bay: BayIndex): EndPose['room'] {
  const { adapters = [], port, end } = setting;
  const seats = [port.seatPoint, ...adapters.slice(0, 1).map((a) => a.from.seatPoint)];
  let least = roomAlong(fittedAt(setting, clockRad).body.slice(1), end.collarDiameterMm / 2, seats, bay, REACH_MM);
  for (const { adapter, points, branch } of adapters)
    for (const line of [points, ...(branch === undefined ? [] : [branch])]) {
      const room = roomAlong(line, adapter.diameterMm / 2, seats.slice(1), bay, least?.roomMm ?? REACH_MM);
      if (room !== undefined) least = { ...room, adapter: adapter.id };
    }
  return least;
}

/** The least room along a line that is less than withinMm. */
function roomAlong(
  line: readonly Vec3[],
  radiusMm: number,
  held: readonly Vec3[],
  bay: BayIndex,
  withinMm: number,
): Room | undefined {
  const near = newNearest();
  let least: Room | undefined;
  for (const point of placesAlong(line, STEP_MM)) {
    const asked = askedDistanceMm(radiusMm, held, point);
    for (const { bvh } of bay.skins) {
      if (!nearestPoint(bvh, point[0], point[1], point[2], asked + (least?.roomMm ?? withinMm), near)) continue;
      const part = partOfTriangle(bay.mesh, near.triangle).name;
      least = { roomMm: near.distanceMm - asked, part, point: [point[0], point[1], point[2]] };
    }
  }
  return least;
}
