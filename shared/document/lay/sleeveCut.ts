import { MM_PER_INCH, radiansToDegrees } from '../../base/units.ts';
import type { Vec3 } from '../../base/vec3.ts';
import type { End, Sleeve } from '../parts/schema.ts';
import type { SleeveCut } from './schema.ts';
import { turnedAngleRad } from './turnedAngle.ts';

export const SLEEVE_REACH_SOURCE =
  'aerospace hose shop notes on fire sleeve; a kit builder’s log (1/8 in past each socket)';

/** mm past each socket that a sleeve must reach to cover it and still leave the nut free. */
export const SLEEVE_REACH_MM = MM_PER_INCH / 8;

/** What a sleeve's reach follows from. */
export type Socket = Pick<End, 'collarLengthMm' | 'shoulderToMouthMm'>;

/** A laid hose with what a sleeve's length follows from. */
export interface SleevedHose {
  readonly cutLengthMm: number;
  readonly centreline: { readonly points: readonly Vec3[] };
  readonly hoseDiameterMm: number;
  readonly sleeve: Pick<Sleeve, 'insideDiameterMm'>;
  readonly a: Socket;
  readonly b: Socket;
}

/**
 * What to cut a sleeve to, mm: an estimate, in closed form. Straight it covers the hose from shoulder to shoulder, each socket as
 * far as that goes past its shoulder, and 1/8 in more. In a bend it lies on the outside: with a play of D - d between its
 * bore D and the hose's outside d, its middle is (D - d) / 2 outside the hose's, and as long as that:
 *
 *     allowance = turned angle * (D - d) / 2          turned angle in rad, all bends together, whichever way
 *
 * That is for a sleeve that gives, longer outside and shorter inside. One whose wall does not stretch needs its outer side, at
 * D - d / 2 from the hose's middle, as long as that: `stiffMm`. Bends within a socket there are none. Own derivation; the
 * trade says "longer with bore and bend" and no figure (shop notes on fire sleeve); reach: a kit builder's log.
 */
export function sleeveCut({ cutLengthMm, centreline, hoseDiameterMm, sleeve, a, b }: SleevedHose): SleeveCut {
  const straightMm = cutLengthMm + pastShoulderMm(a) + pastShoulderMm(b);
  const turnedRad = turnedAngleRad(centreline.points);
  const playMm = Math.max(0, sleeve.insideDiameterMm - hoseDiameterMm);
  const allowanceMm = (turnedRad * playMm) / 2;
  return {
    cutLengthMm: straightMm + allowanceMm,
    stiffMm: straightMm + turnedRad * (hoseDiameterMm / 2 + playMm),
    reachMm: SLEEVE_REACH_MM,
    turnedDeg: radiansToDegrees(turnedRad),
    allowanceMm,
  };
}

/** mm. From the shoulder to where the sleeve ends: over what of the socket is past the shoulder, and 1/8 in. */
function pastShoulderMm(socket: Socket): number {
  return socketPastShoulderMm(socket) + SLEEVE_REACH_MM;
}

/** mm, at least 0: how far a socket goes past the shoulder, away from the hose; 0 where its length is not stated. */
export function socketPastShoulderMm({ collarLengthMm, shoulderToMouthMm }: Socket): number {
  return Math.max(0, (collarLengthMm ?? 0) - shoulderToMouthMm);
}
