import { radiansToDegrees, wrapDegrees } from '../../base/units.ts';
import { signedAngleAbout, type Vec3 } from '../../base/vec3.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { carryAlongCurve } from '../../geometry/twistFreeFrame.ts';

/** mm. Sample spacing for carrying the frame: double reflection's error at 2 mm is under 1e-6 degree on any bend a hose can take. */
const CARRY_STEP_MM = 2;

/**
 * The clock between two outlets, degrees in [0, 360): hose straight, look along it from the near end, near outlet at
 * 6 o'clock, counter-clockwise to the far outlet. Wording of MIL-DTL-83796/5 (after SAE J517); the same number from
 * either end; measured the wrong way round it is 360 - a.
 *
 *   looking from A along the hose (away from you), a = 270:
 *
 *            B               12
 *            ^
 *      A <---+          9          3
 *                            6
 *
 * curve: centreline from A to B; upA: outlet direction of END A square to the hose at its start; upB: of END B at its
 * end. Method: upA is carried along the curve without twist; a right-handed turn about the way of looking is clockwise
 * to the eye, so the counter-clockwise angle is its negative. Error of the carried frame under 1e-5 degree.
 */
export function clockBetween(curve: CubicCurve, upA: Vec3, upB: Vec3): number {
  const arrived = carryAlongCurve(curve, upA, CARRY_STEP_MM);
  const tangent = curveAt(curve, curveLengthMm(curve)).tangent;
  return wrapDegrees(-radiansToDegrees(signedAngleAbout(tangent, arrived, upB)));
}

/**
 * By how much a hose that was made with `clockDeg` is wrung when it lies so, degrees in (-180, 180]: the clock it was made with less the
 * one that this shape asks for. Arguments as of `clockBetween`.
 */
export function clockMissDeg(curve: CubicCurve, upA: Vec3, upB: Vec3, clockDeg: number): number {
  const off = wrapDegrees(clockDeg - clockBetween(curve, upA, upB));
  return off > 180 ? off - 360 : off;
}
