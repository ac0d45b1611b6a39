import { wrapDegrees } from '../../base/units.ts';

/** A paper strip that goes once round the hose. Distances along the strip from its left edge, mm, at 1:1. */
export interface WrapStrip {
  /** pi times the outside diameter: the strip's right edge meets its left edge here */
  readonly circumferenceMm: number;
  /** line of END A's outlet */
  readonly aMm: number;
  /** line of END B's outlet: the left edge itself */
  readonly bMm: number;
  /** from line A leftward (the way of the arrow) to line B: diameter x pi x a / 360 */
  readonly arcMm: number;
}

/**
 * Where the two clock lines stand on a strip wrapped round a hose, print outward, its lower edge towards END A and its
 * upper edge towards END B. Seen so, the right of the paper runs clockwise as looked along the hose from END A, thus
 * the counter-clockwise turn from A to B runs to the left. Diameter in mm above zero, of the surface it is wrapped on;
 * clock in degrees. Exact for thin paper; paper of 0.1 mm makes it 0.3 mm short all round.
 */
export function wrapStrip(outsideDiameterMm: number, clockDeg: number): WrapStrip {
  const circumferenceMm = Math.PI * outsideDiameterMm;
  const arcMm = (circumferenceMm * wrapDegrees(clockDeg)) / 360;
  return { circumferenceMm, aMm: arcMm, bMm: 0, arcMm };
}
