import { degreesToRadians } from '../../base/units.ts';
import { type EndPoint, endCentreline } from '../../document/parts/endCentreline.ts';
import type { End } from '../../document/parts/schema.ts';

/** A place on an end in its own plane: mm outward along the hose axis from the shoulder, mm off the axis (the drop). */
export interface ProfilePoint {
  readonly outMm: number;
  readonly dropMm: number;
}

/** An end in its own plane, for drawing. */
export interface EndProfile {
  /** the middle of the tube from shoulder to seat, the corner at the bend point rounded */
  readonly centre: readonly ProfilePoint[];
  readonly seat: ProfilePoint;
  /** unit, the way the outlet faces, in the same two directions */
  readonly facing: ProfilePoint;
}

const BEND_STEPS = 12;
/** Share of the shorter leg that the drawn bend takes where the part's table gives no radius of the tube: only the look. */
const BEND_SHARE = 0.75;

/**
 * Where shoulder, bend and seat of an end lie, and the tube's middle line between them. Lengths and the bend angle are
 * the part's own, and so is the bend where its radius is stated or it is a half turn; else the corner is rounded for the eye.
 */
export function endProfile(end: End): EndProfile {
  const bend = degreesToRadians(end.bendAngleDeg);
  const facing: ProfilePoint = { outMm: Math.cos(bend), dropMm: Math.sin(bend) };
  const along = (mm: number): ProfilePoint => ({
    outMm: end.bendToShoulderMm + facing.outMm * mm,
    dropMm: facing.dropMm * mm,
  });
  const seat = along(end.seatToBendMm);
  const shoulder: ProfilePoint = { outMm: 0, dropMm: 0 };
  if (end.bendAngleDeg === 0) return { centre: [shoulder, seat], seat, facing };
  if (end.bendAngleDeg === 180 || end.tubeBendRadiusMm !== undefined) return asBent(end, facing);
  const reach = BEND_SHARE * Math.min(end.seatToBendMm, end.bendToShoulderMm);
  const from: ProfilePoint = { outMm: end.bendToShoulderMm - reach, dropMm: 0 };
  const corner: ProfilePoint = { outMm: end.bendToShoulderMm, dropMm: 0 };
  return { centre: [shoulder, ...roundedCorner(from, corner, along(reach)), seat], seat, facing };
}

/** The end's own middle line, turned so that its shoulder is at (0, 0) and the hose axis level. */
function asBent(end: End, facing: ProfilePoint): EndProfile {
  const { points, shoulder, hose } = endCentreline(end);
  const turned = ({ alongMm, asideMm }: EndPoint): ProfilePoint => {
    const [along, aside] = [alongMm - shoulder.alongMm, asideMm - shoulder.asideMm];
    return {
      outMm: -(along * hose.alongMm + aside * hose.asideMm),
      dropMm: aside * hose.alongMm - along * hose.asideMm,
    };
  };
  // From seat to shoulder; the socket beyond is drawn as a collar.
  const centre = points.slice(0, -1).map(turned).reverse();
  return { centre, seat: centre[centre.length - 1] as ProfilePoint, facing };
}

/** Points of the parabola that touches both legs, near enough a tube's bend. */
function roundedCorner(from: ProfilePoint, corner: ProfilePoint, to: ProfilePoint): ProfilePoint[] {
  return Array.from({ length: BEND_STEPS + 1 }, (_, i) => {
    const t = i / BEND_STEPS;
    const [p, q, r] = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
    return {
      outMm: p * from.outMm + q * corner.outMm + r * to.outMm,
      dropMm: p * from.dropMm + q * corner.dropMm + r * to.dropMm,
    };
  });
}
