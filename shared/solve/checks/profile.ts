import { radiansToDegrees } from '../../base/units.ts';
import { distance, dot, sub, type Vec3 } from '../../base/vec3.ts';
import { endBody, portToShoulder } from '../../document/lay/endBody.ts';
import type { Lay, Place } from '../../document/lay/schema.ts';
import { LEVEL_UP } from '../flow/upAt.ts';
import { endPlace, type Side } from './places.ts';

/** A short stretch of a hose or of its end, in the order in which a drain flows. */
export interface Stretch {
  /** deg, how steeply it falls; below zero it rises. */
  readonly fallDeg: number;
  readonly lengthMm: number;
  /** mm, how much higher its far end lies; below zero it falls. */
  readonly riseMm: number;
  /** Where it begins; a stretch inside an end stands at that end's shoulder. */
  readonly at: Place;
  /** The end that it is part of, if not of the hose. */
  readonly inEnd?: Side;
}

/** The higher end of a lay by its seat, +Z up: the one a drain runs from. */
export function higherSide(lay: Lay): Side {
  return lay.ends.a.seatPoint[2] >= lay.ends.b.seatPoint[2] ? 'a' : 'b';
}

/** The lower end of a lay by its seat, +Z up: the one a drain runs to. */
export function lowerSide(lay: Lay): Side {
  return higherSide(lay) === 'a' ? 'b' : 'a';
}

/** A point on the way from seat to seat. */
export interface Knot {
  readonly point: Vec3;
  /** Its place on the hose; inside an end, that end's shoulder. */
  readonly place: Place;
  readonly inEnd?: Side;
}

/**
 * The way that fluid takes downwards through both ends and the hose, from the seat that is higher at rest to the lower; its
 * falls against `up`, a unit vector, where the bay leans.
 */
export function flowDown(lay: Lay, up: Vec3 = LEVEL_UP): Stretch[] {
  const knots = seatToSeat(lay);
  const down = higherSide(lay) === 'a' ? knots : knots.reverse();
  return down.slice(1).flatMap((to, i) => {
    const from = down[i];
    if (from === undefined) return [];
    const lengthMm = distance(from.point, to.point);
    if (lengthMm === 0) return [];
    const riseMm = dot(sub(to.point, from.point), up);
    const fallDeg = radiansToDegrees(Math.asin(Math.max(-1, Math.min(1, -riseMm / lengthMm))));
    const inEnd = from.inEnd ?? to.inEnd;
    return [{ fallDeg, lengthMm, riseMm, at: from.place, ...(inEnd === undefined ? {} : { inEnd }) }];
  });
}

/** From port A through its adapters and END A to its shoulder, the centreline from shoulder to shoulder, and the same of B. */
export function seatToSeat(lay: Lay): Knot[] {
  const { points, arcLengthMm } = lay.centreline;
  const hose = points.map((point, i): Knot => ({ point, place: { arcLengthMm: arcLengthMm[i] ?? 0, point } }));
  const inEnd = (side: Side): Knot[] => {
    const end = lay.ends[side];
    const place = endPlace(lay, side, end.shoulderPoint);
    return portToShoulder(end.adapters ?? [], endBody(end)).map((point) => ({ point, place, inEnd: side }));
  };
  return [...inEnd('a'), ...hose, ...inEnd('b').reverse()];
}
