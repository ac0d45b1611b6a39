import { degreesToRadians } from '../../base/units.ts';
import type { Vec3 } from '../../base/vec3.ts';
import type { RockExtreme } from '../../document/lay/schema.ts';
import { CHASSIS_BODY } from '../../document/project/schema.ts';
import { inverseMotion, movePoint } from '../../geometry/rigidMotion.ts';
import { type EndPiece, endPieces, roomRound } from '../layRun/measureEndRoom.ts';
import type { BodyBay } from './bodyBays.ts';
import type { HeldHose } from './heldHose.ts';
import type { Motions } from './movedBay.ts';

/**
 * The least room round the ends of a hose, and the adapters under them, to the bodies that move against what they stand on, mm, as
 * `measureEndRoom` takes it. What moves with an end keeps the room that was measured at rest. Nothing where there is room to spare.
 */
export function endRoomThen(
  { setting, resolved, taken }: HeldHose,
  bays: readonly BodyBay[],
  motions: Motions,
): RockExtreme['endRoom'] {
  let least: RockExtreme['endRoom'];
  for (const end of ['a', 'b'] as const) {
    const own = resolved[end].port.body ?? CHASSIS_BODY.id;
    const pieces = endPieces(setting[end], degreesToRadians(taken.lay.ends[end].ownClockDeg));
    for (const { body, bay } of bays) {
      if (body === own) continue;
      const [there, back] = [motions(own), inverseMotion(motions(body))];
      // Asked where that body was scanned.
      const room = roomRound(
        movedPieces(pieces, (p) => movePoint(back, movePoint(there, p))),
        bay,
      );
      if (room === undefined || (least !== undefined && room.roomMm >= least.roomMm)) continue;
      const [x, y, z] = movePoint(motions(body), room.point as Vec3);
      least = { ...room, end, point: [x, y, z] };
    }
  }
  return least;
}

function movedPieces(pieces: readonly EndPiece[], moved: (p: Vec3) => Vec3): EndPiece[] {
  return pieces.map((piece) => ({ ...piece, line: piece.line.map(moved), held: piece.held.map(moved) }));
}
