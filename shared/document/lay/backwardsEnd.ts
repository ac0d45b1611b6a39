import { degreesApart, degreesToRadians, wrapDegrees } from '../../base/units.ts';
import { add, distance, scale, sub, triple, turnAbout, type Vec3 } from '../../base/vec3.ts';
import type { EndPose, Lay } from './schema.ts';

/** The hose that a shop makes from the clock read the wrong way round, held at END A as laid: where its END B comes to stand. */
export interface BackwardsEnd {
  /** END B as it would stand */
  readonly end: EndPose;
  /** deg in [0, 360): the clock it was made with */
  readonly clockDeg: number;
  /** deg, 0 to 180: how far END B is turned from where it belongs */
  readonly turnedDeg: number;
  /** mm: how far its seat comes to stand from its port */
  readonly seatOffMm: number;
}

/** deg. A hose whose mirror image is off by no more is the same hose. */
const SAME_HOSE_DEG = 0.5;

/**
 * END B of the hose made from 360 - a instead of a, on the line of the laid hose: turned about the hose's axis at its shoulder by a -
 * (360 - a), right-handed from END A to END B. Its seat then stands 2 r |sin a| from its port, r its distance from that
 * axis. undefined where the clock is free, where both readings are the same hose (0 and 180), and where there is no hose. Exact.
 */
export function backwardsEnd(lay: Lay): BackwardsEnd | undefined {
  if (lay.clock.kind === 'free' || lay.outcome === 'no-way') return undefined;
  const { deg } = lay.clock;
  const clockDeg = wrapDegrees(360 - deg);
  const turnedDeg = degreesApart(clockDeg, deg);
  if (turnedDeg <= SAME_HOSE_DEG) return undefined;
  const { b } = lay.ends;
  const along = scale(b.hoseAxis, -1);
  const turnRad = degreesToRadians(deg - clockDeg);
  const direction = (v: Vec3): [number, number, number] => triple(turnAbout(v, along, turnRad));
  const point = (p: Vec3): [number, number, number] =>
    triple(add(b.shoulderPoint, turnAbout(sub(p, b.shoulderPoint), along, turnRad)));
  const end: EndPose = {
    ...b,
    seatPoint: point(b.seatPoint),
    bendPoint: point(b.bendPoint),
    outletAxis: direction(b.outletAxis),
    up: direction(b.up),
    ...(b.body === undefined ? {} : { body: b.body.map(point) }),
  };
  return { end, clockDeg, turnedDeg, seatOffMm: distance(end.seatPoint, b.seatPoint) };
}
