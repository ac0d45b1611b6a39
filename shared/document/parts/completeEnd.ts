import { degreesToRadians } from '../../base/units.ts';
import type { End, EndRow } from './schema.ts';

/**
 * An end with the lengths its row leaves out worked out from C and drop (mm): of a bent one, seatToBend = drop / sin b and
 * bendToShoulder = C - seatToBend cos b, b the bend angle; a straight one is C long. Undefined where the row has neither
 * the two lengths nor what they follow from: a half turn's lengths do not follow from C and drop. Exact.
 */
export function completeEnd(row: EndRow): End | undefined {
  const { seatToBendMm, bendToShoulderMm, cutOffMm, dropMm, bendAngleDeg } = row;
  if (seatToBendMm !== undefined && bendToShoulderMm !== undefined) return { ...row, seatToBendMm, bendToShoulderMm };
  if (cutOffMm === undefined) return undefined;
  if (bendAngleDeg === 0) return { ...row, seatToBendMm: 0, bendToShoulderMm: cutOffMm };
  if (dropMm === undefined || bendAngleDeg === 180) return undefined;
  const bendRad = degreesToRadians(bendAngleDeg);
  const toBendMm = dropMm / Math.sin(bendRad);
  return { ...row, seatToBendMm: toBendMm, bendToShoulderMm: cutOffMm - toBendMm * Math.cos(bendRad) };
}
