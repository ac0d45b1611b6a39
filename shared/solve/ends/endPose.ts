import { degreesToRadians } from '../../base/units.ts';
import { add, addScaled, cross, scale, type Vec3 } from '../../base/vec3.ts';
import { type EndPoint, endCentreline } from '../../document/parts/endCentreline.ts';
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
  /** where the two axes meet; at 180 degrees the middle of the half turn */
  readonly bendPoint: Vec3;
  readonly shoulderPoint: Vec3;
  readonly mouthPoint: Vec3;
  /** from the end into the hose */
  readonly hoseAxis: Vec3;
  /** the way the end faces its port */
  readonly outletAxis: Vec3;
  /**
   * the outlet's direction square to the hose axis: what the clock between two ends is read from. At 180 degrees, where
   * outlet and hose are parallel, it is what it is just short of that: from the hose axis to the seat
   */
  readonly up: Vec3;
  /** middle of the end from seat to mouth: seat, bend (in chords where it is round), shoulder, mouth */
  readonly body: readonly Vec3[];
}

/**
 * Fits an end to a port at its own clock.
 * clockRad: about the port axis from the port's 12 o'clock, clockwise for an eye behind the port looking out along the
 * axis, which is right-handed about the axis. With b the bend angle and e the clock's direction, the hose leaves along
 * cos b axis + sin b e. At 180 degrees it comes back beside the port, its axis the end's drop away towards e.
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
  const { points, bend } = endCentreline(end);
  const place = ({ alongMm, asideMm }: EndPoint): Vec3 =>
    addScaled(addScaled(port.seatPoint, port.axis, alongMm), side, asideMm);
  const bendPoint = place(bend);
  const turned =
    end.bendAngleDeg === 180
      ? addScaled(place({ alongMm: end.seatToBendMm, asideMm: 0 }), side, end.dropMm ?? 0)
      : bendPoint;
  const shoulderPoint = addScaled(turned, hoseAxis, end.bendToShoulderMm);
  const mouthPoint = addScaled(turned, hoseAxis, end.bendToShoulderMm + end.shoulderToMouthMm);
  return {
    seatPoint: port.seatPoint,
    bendPoint,
    shoulderPoint,
    mouthPoint,
    hoseAxis,
    outletAxis: scale(port.axis, -1),
    up: add(scale(port.axis, -Math.sin(bendRad)), scale(side, Math.cos(bendRad))),
    body: [port.seatPoint, ...points.slice(1, -2).map(place), shoulderPoint, mouthPoint],
  };
}
