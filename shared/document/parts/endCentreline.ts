import { degreesToRadians } from '../../base/units.ts';
import type { End } from './schema.ts';

/** A place in an end's own plane, mm: along the port's axis out of the part, and aside, the way the end is bent. */
export interface EndPoint {
  readonly alongMm: number;
  readonly asideMm: number;
}

/** The middle line of an end in its own plane, from its seat at (0, 0). */
export interface EndCentreline {
  /** seat to mouth: the tube, its bend in chords where its radius is known, then the straight socket */
  readonly points: readonly EndPoint[];
  /** where the two axes meet; at 180 degrees the middle of the half turn */
  readonly bend: EndPoint;
  /** where the hose butts */
  readonly shoulder: EndPoint;
  /** where the hose leaves socket or collar */
  readonly mouth: EndPoint;
  /** unit, the way the hose leaves */
  readonly hose: EndPoint;
}

type EndShape = Pick<
  End,
  'bendAngleDeg' | 'seatToBendMm' | 'bendToShoulderMm' | 'shoulderToMouthMm' | 'dropMm' | 'tubeBendRadiusMm'
>;

/** rad. Between two points of a bend: a chord then lies off its arc by 1/1900 of the radius at most. */
const CHORD_RAD = degreesToRadians(7.5);

/**
 * Where the middle of an end runs, mm, in its own plane. Bent by less than 180 degrees, two legs meet at the bend; the
 * corner is an arc of the tube's bend radius where that is stated (or of the largest that fits the shorter leg, where that
 * is less), and stays a corner where it is not: the corner is then the outer side of any tube. At 180 degrees the tube
 * begins to bend seat_to_bend from the seat and ends bending `dropMm` aside; with no radius, or with one that is half the drop
 * or more, that is one half circle, with less two quarters and a straight.
 *
 *      90 degrees                          180 degrees
 *
 *      aside  | hose                       seat o------.         seat_to_bend
 *             |                                         )  drop
 *     seat o--' along = port's axis        hose ==+----'         bend_to_shoulder
 *
 * Exact but for the chords of a bend, which lie within 1/1900 of its radius.
 */
export function endCentreline(end: EndShape): EndCentreline {
  return end.bendAngleDeg === 180 ? halfTurn(end) : legs(end);
}

function legs(end: EndShape): EndCentreline {
  const bendRad = degreesToRadians(end.bendAngleDeg);
  const hose: EndPoint = { alongMm: Math.cos(bendRad), asideMm: Math.sin(bendRad) };
  const bend: EndPoint = { alongMm: end.seatToBendMm, asideMm: 0 };
  const shoulder = onward(bend, hose, end.bendToShoulderMm);
  const mouth = onward(bend, hose, end.bendToShoulderMm + end.shoulderToMouthMm);
  return { points: [SEAT, ...corner(end, bendRad, bend), shoulder, mouth], bend, shoulder, mouth, hose };
}

const SEAT: EndPoint = { alongMm: 0, asideMm: 0 };

/** The bend itself: its corner, or the arc that touches both legs. */
function corner(end: EndShape, bendRad: number, bend: EndPoint): EndPoint[] {
  if (end.tubeBendRadiusMm === undefined || bendRad === 0) return [bend];
  const leg = Math.min(end.seatToBendMm, end.bendToShoulderMm, end.tubeBendRadiusMm * Math.tan(bendRad / 2));
  if (leg <= 0) return [bend];
  return arc({ alongMm: bend.alongMm - leg, asideMm: 0 }, leg / Math.tan(bendRad / 2), 0, bendRad);
}

function halfTurn(end: EndShape): EndCentreline {
  const dropMm = end.dropMm ?? 0;
  const radiusMm = Math.min(end.tubeBendRadiusMm ?? Number.POSITIVE_INFINITY, dropMm / 2);
  const first: EndPoint = { alongMm: end.seatToBendMm, asideMm: 0 };
  const second: EndPoint = { alongMm: end.seatToBendMm + radiusMm, asideMm: dropMm - radiusMm };
  const hose: EndPoint = { alongMm: -1, asideMm: 0 };
  const away: EndPoint = { alongMm: end.seatToBendMm, asideMm: dropMm };
  const shoulder = onward(away, hose, end.bendToShoulderMm);
  const mouth = onward(away, hose, end.bendToShoulderMm + end.shoulderToMouthMm);
  const round = [...arc(first, radiusMm, 0, Math.PI / 2), ...arc(second, radiusMm, Math.PI / 2, Math.PI)];
  return {
    points: [SEAT, ...round, shoulder, mouth],
    bend: { alongMm: end.seatToBendMm + radiusMm, asideMm: dropMm / 2 },
    shoulder,
    mouth,
    hose,
  };
}

/** Points of an arc that sets out at `from`, heading fromRad off the port's axis, and bends aside to toRad; both ends among them. */
function arc(from: EndPoint, radiusMm: number, fromRad: number, toRad: number): EndPoint[] {
  const steps = Math.max(1, Math.ceil((toRad - fromRad) / CHORD_RAD - ROUNDING_STEPS));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const headingRad = fromRad + ((toRad - fromRad) * i) / steps;
    return {
      alongMm: from.alongMm + radiusMm * (Math.sin(headingRad) - Math.sin(fromRad)),
      asideMm: from.asideMm + radiusMm * (Math.cos(fromRad) - Math.cos(headingRad)),
    };
  });
}

/** Steps. A whole number of chords is not one more for rounding. */
const ROUNDING_STEPS = 1e-9;

function onward(from: EndPoint, way: EndPoint, mm: number): EndPoint {
  return { alongMm: from.alongMm + way.alongMm * mm, asideMm: from.asideMm + way.asideMm * mm };
}
