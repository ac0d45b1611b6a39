import { angleBetween } from '../../base/vec3.ts';
import type { Straightened } from '../../document/straightened/schema.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';

/** A bend is judged over so many spacings of the points, and over at least so many mm: less shows the points, not the rod. */
const STRETCH_SPACINGS = 3;
const LEAST_STRETCH_MM = 25;
/** Stretches looked at start this share of one apart. */
const STEP = 0.1;
/** mm. A rod straighter than this is straight. */
const STRAIGHT_MM = 10_000;

/** The least radius of a rod known by points so far apart (mm): the mean over a stretch of three of them, and where its middle is. */
export function tightestBend(curve: CubicCurve, spacingMm: number): Straightened['tightest'] {
  const totalMm = curveLengthMm(curve);
  const stretchMm = Math.min(totalMm, Math.max(STRETCH_SPACINGS * spacingMm, LEAST_STRETCH_MM));
  let best = { radiusMm: STRAIGHT_MM, arcLengthMm: totalMm / 2 };
  for (let from = 0; from + stretchMm <= totalMm; from += STEP * stretchMm) {
    const turnRad = angleBetween(curveAt(curve, from).tangent, curveAt(curve, from + stretchMm).tangent);
    const radiusMm = turnRad > 0 ? stretchMm / turnRad : STRAIGHT_MM;
    if (radiusMm < best.radiusMm) best = { radiusMm, arcLengthMm: from + stretchMm / 2 };
  }
  return best;
}
