import { degreesToRadians } from '../../../shared/base/units.ts';
import { dot, length, rejectFrom, sub } from '../../../shared/base/vec3.ts';
import type { EndPose, Lay } from '../../../shared/document/lay/schema.ts';

/** An end on the straight hose, seen from the side: mm beyond the shoulder along the hose, and off the hose's axis. */
export interface SideOutlet {
  readonly bendBeyondMm: number;
  readonly seatBeyondMm: number;
  /** towards 6 o'clock of END A, that is down on the drawing; negative = up */
  readonly seatDownMm: number;
  /** towards who looks at the drawing; negative = away */
  readonly seatTowardMm: number;
  readonly collarMm: number;
}

/** Shares of an end's drop that are too small to be said to point towards or away. */
const TELLING_SHARE = 0.1;

/**
 * Both ends of a lay as they stand on the straight hose drawn with END A first and END A's outlet down (6 o'clock).
 * Looking along the hose from END A, counter-clockwise from 6 o'clock goes to 3 o'clock, which on this drawing is the
 * side towards the reader: an angle a puts END B's outlet cos a down and sin a towards.
 */
export function sideOutlets(lay: Lay): { readonly a: SideOutlet; readonly b: SideOutlet } {
  const clockRad = lay.clock.kind === 'angle' ? degreesToRadians(lay.clock.deg) : 0;
  return { a: sideOutlet(lay.ends.a, 0), b: sideOutlet(lay.ends.b, clockRad) };
}

/** The larger of the two ends' drops, mm: how far a seat stands off the hose's axis. */
export function farthestDropMm(lay: Pick<Lay, 'ends'>): number {
  const drop = ({ seatPoint, shoulderPoint, hoseAxis }: EndPose): number =>
    length(rejectFrom(sub(seatPoint, shoulderPoint), hoseAxis));
  return Math.max(drop(lay.ends.a), drop(lay.ends.b));
}

function sideOutlet(pose: EndPose, clockRad: number): SideOutlet {
  const toSeat = sub(pose.seatPoint, pose.shoulderPoint);
  const dropMm = length(rejectFrom(toSeat, pose.hoseAxis));
  return {
    bendBeyondMm: -dot(sub(pose.bendPoint, pose.shoulderPoint), pose.hoseAxis),
    seatBeyondMm: -dot(toSeat, pose.hoseAxis),
    seatDownMm: dropMm * Math.cos(clockRad),
    seatTowardMm: dropMm * Math.sin(clockRad),
    collarMm: dot(sub(pose.mouthPoint, pose.shoulderPoint), pose.hoseAxis),
  };
}

/** Which way an outlet points out of the drawing, where it does. */
export function outOfDrawing({ seatDownMm, seatTowardMm }: SideOutlet): 'toward' | 'away' | null {
  const drop = Math.hypot(seatDownMm, seatTowardMm);
  if (drop === 0 || Math.abs(seatTowardMm) < TELLING_SHARE * drop) return null;
  return seatTowardMm > 0 ? 'toward' : 'away';
}
