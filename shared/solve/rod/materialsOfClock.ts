import { degreesToRadians } from '../../base/units.ts';
import { rejectFrom, turnAbout, unit, type Vec3 } from '../../base/vec3.ts';

/**
 * The material directions of a hose that was made with a given clock between its outlets, for `RodTwist`: its lay line
 * leaves A along A's outlet, and where it comes out at B follows from B's outlet and the clock.
 * @param upA, upB outlet directions of the two ends as they stand in the bay; made square to the hose
 * @param directionA, directionB unit, the hose's directions at the ends, along A to B
 * @param clockDeg as `clockBetween` gives it: hose straight, looking from A, near outlet at 6 o'clock, counter-clockwise to
 *   the far one
 * A counter-clockwise angle to the eye that looks along the hose is left-handed about the hose, so the twist of a hose made
 * with the clock c and laid where it would want c0 is c - c0.
 */
export function materialsOfClock(
  upA: Vec3,
  upB: Vec3,
  directionA: Vec3,
  directionB: Vec3,
  clockDeg: number,
): { readonly materialA: Vec3; readonly materialB: Vec3 } {
  const outletB = unit(rejectFrom(upB, directionB));
  return {
    materialA: unit(rejectFrom(upA, directionA)),
    materialB: turnAbout(outletB, directionB, degreesToRadians(clockDeg)),
  };
}
