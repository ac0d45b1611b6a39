import { degreesToRadians } from '../../base/units.ts';
import type { End } from './schema.ts';

type EndLengths = Pick<End, 'bendAngleDeg' | 'seatToBendMm' | 'bendToShoulderMm' | 'dropMm'>;

/**
 * mm. C of an end: seat to shoulder, projected on the axis of the hose lying straight. The seat's centre counts (the
 * centreline of the sealing end for an angled end: MIL-DTL-83796/5 Fig. 2 notes 1-4). Negative C cannot be ruled out
 * for bends past 90 degrees: the seat then lies back along the hose.
 *
 *     seat o--------. bend            C = seatToBend * cos(bendAngle) + bendToShoulder
 *                    \  bendAngle     drop = seatToBend * sin(bendAngle)
 *                     \ shoulder ===== hose
 */
export function cutOffMm(end: EndLengths): number {
  return end.seatToBendMm * Math.cos(degreesToRadians(end.bendAngleDeg)) + end.bendToShoulderMm;
}

/** mm, 0 or more. How far the seat's centre of an end lies from the axis of the hose; of a half turn, as its row states. */
export function dropMm(end: EndLengths): number {
  if (end.bendAngleDeg === 180) return end.dropMm ?? 0;
  return end.seatToBendMm * Math.sin(degreesToRadians(end.bendAngleDeg));
}
