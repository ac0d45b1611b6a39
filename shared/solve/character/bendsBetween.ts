import { distance, type Vec3 } from '../../base/vec3.ts';

/** The tightest bend of a row of points between two of their arc lengths. */
export interface TightestBend {
  /** mm, infinite where the stretch is straight or holds fewer than three points */
  readonly radiusMm: number;
  readonly arcLengthMm: number;
  readonly point: Vec3;
}

/**
 * Tightest bend along a centreline given as points (mm), from one arc length to another: the least radius of the circle
 * through three neighbours. On a smooth curve with points h apart it is true to about (h / R)^2; where a clamp makes the
 * curvature step it reads the mean of both sides.
 */
export function tightestBetween(
  points: readonly Vec3[],
  arcLengthMm: readonly number[],
  fromMm: number,
  toMm: number,
): TightestBend {
  let tightest: TightestBend = {
    radiusMm: Number.POSITIVE_INFINITY,
    arcLengthMm: fromMm,
    point: points[0] ?? [0, 0, 0],
  };
  for (let i = 1; i + 1 < points.length; i++) {
    const at = arcLengthMm[i] as number;
    if (at < fromMm || at > toMm) continue;
    const radiusMm = circleRadius(points[i - 1] as Vec3, points[i] as Vec3, points[i + 1] as Vec3);
    if (radiusMm < tightest.radiusMm) tightest = { radiusMm, arcLengthMm: at, point: points[i] as Vec3 };
  }
  return tightest;
}

/** Product of the sides over four times the area (Heron). */
function circleRadius(a: Vec3, b: Vec3, c: Vec3): number {
  const [x, y, z] = [distance(b, c), distance(a, c), distance(a, b)];
  const s = (x + y + z) / 2;
  const square = s * (s - x) * (s - y) * (s - z);
  return square <= 0 ? Number.POSITIVE_INFINITY : (x * y * z) / (4 * Math.sqrt(square));
}
