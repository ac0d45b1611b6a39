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

/** One piece of a fitted end as it stands, thick all along as it is at most. */
export interface EndPiece {
  readonly line: readonly Vec3[];
  readonly radiusMm: number;
  /** what it stands on and may touch, by the rule of held places */
  readonly held: readonly Vec3[];
  /** the adapter that it is; absent = the end itself */
  readonly adapter?: string;
}

/**
 * Least room round a fitted end, mm, from its bend to its mouth, taken at its collar's radius all along (the tube of an
 * angled end is thinner, so this is the safe side), and round the adapters under it, from seat to seat at their own:
 * distance to the bay less that radius, less near the seats of end and port by the rule of held places. Looked at every 2 mm.
 * Nothing where there is room to spare.
 */
export function measureEndRoom(setting: EndSetting, clockRad: number, bay: BayIndex): EndPose['room'] {
  return roomRound(endPieces(setting, clockRad), bay);
}

/** The pieces of an end at a clock of its own, bay frame, as scanned. */
export function endPieces(setting: EndSetting, clockRad: number): EndPiece[] {
  const { adapters = [], port, end } = setting;
  const seats = [port.seatPoint, ...adapters.slice(0, 1).map((a) => a.from.seatPoint)];
  const itself = { line: fittedAt(setting, clockRad).body.slice(1), radiusMm: end.collarDiameterMm / 2, held: seats };
  const under = adapters.flatMap(({ adapter, points, branch }) =>
    [points, ...(branch === undefined ? [] : [branch])].map((line) => ({
      line,
      radiusMm: adapter.diameterMm / 2,
      held: seats.slice(1),
      adapter: adapter.id,
    })),
  );
  return [itself, ...under];
}

/** The least room round any of the pieces; nothing where there is room to spare. */
export function roomRound(pieces: readonly EndPiece[], bay: BayIndex): EndPose['room'] {
  let least: Room | undefined;
  for (const { line, radiusMm, held, adapter } of pieces) {
    const room = roomAlong(line, radiusMm, held, bay, least?.roomMm ?? REACH_MM);
    if (room !== undefined) least = { ...room, ...(adapter === undefined ? {} : { adapter }) };
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
