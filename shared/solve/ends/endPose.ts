import { degreesToRadians } from '../../base/units.ts';
import { add, addScaled, cross, scale, type Vec3 } from '../../base/vec3.ts';
import type { End } from '../../document/parts/schema.ts';

/** Where a port is and how it faces: unit axis out of the part, unit `up` (12 o'clock) square to it. */
export interface PortFrame {
  readonly seatPoint: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
}

/** Where an end sits when fitted to a port at one clock. Points in mm, directions unit, bay frame. */
export interface FittedEnd {
  readonly seatPoint: Vec3;
  readonly bendPoint: Vec3;
  readonly shoulderPoint: Vec3;
  readonly mouthPoint: Vec3;
  /** from the end into the hose */
  readonly hoseAxis: Vec3;
  /** from the bend point to the seat */
  readonly outletAxis: Vec3;
  /** the outlet's direction square to the hose axis: what the clock between two ends is read from */
  readonly up: Vec3;
}

/**
 * Fits an end to a port at its own clock.
 * clockRad: about the port axis from the port's 12 o'clock, clockwise for an eye behind the port looking out along the
 * axis, which is right-handed about the axis. With b the bend angle and e the clock's direction, the hose leaves along
 * cos b axis + sin b e.
 *
 *            e (12 o'clock at clock 0)
 *            ^        hose axis, bent by b from the port axis
 *            |      /
 *   part |===o-----+ - - - > port axis
 *          seat   bend point
 */
export function fitEnd(port: PortFrame, end: End, clockRad: number): FittedEnd {
  const bendRad = degreesToRadians(end.bendAngleDeg);
  const side = add(scale(port.up, Math.cos(clockRad)), scale(cross(port.axis, port.up), Math.sin(clockRad)));
  const hoseAxis = add(scale(port.axis, Math.cos(bendRad)), scale(side, Math.sin(bendRad)));
  const bendPoint = addScaled(port.seatPoint, port.axis, end.seatToBendMm);
  return {
    seatPoint: port.seatPoint,
    bendPoint,
    shoulderPoint: addScaled(bendPoint, hoseAxis, end.bendToShoulderMm),
    mouthPoint: addScaled(bendPoint, hoseAxis, end.bendToShoulderMm + end.shoulderToMouthMm),
    hoseAxis,
    outletAxis: scale(port.axis, -1),
    up: add(scale(port.axis, -Math.sin(bendRad)), scale(side, Math.cos(bendRad))),
  };
}
