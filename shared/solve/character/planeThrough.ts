import {
  addScaled,
  angleBetween,
  dot,
  length,
  rejectFrom,
  scale,
  sub,
  unit,
  type Vec3,
  ZERO,
} from '../../base/vec3.ts';
import { symmetricEigen } from '../rod/symmetricEigen.ts';

/** A plane with how far the points it was laid through lie off it. */
export interface PlaneThrough {
  readonly point: Vec3;
  /** unit */
  readonly normal: Vec3;
  /** mm, the furthest of the points, to either side */
  readonly offMm: number;
}

/**
 * The plane that lies best through points in mm, by least squares: through their middle, square to the direction in which
 * they spread least (smallest eigenvector of their scatter). offMm is the furthest point's distance, so it is an upper
 * bound on the least there could be. Points on one line lie in any plane through it: offMm is then 0 to rounding.
 */
export function planeThrough(points: readonly Vec3[]): PlaneThrough {
  const middle = scale(
    points.reduce((sum, p) => addScaled(sum, p, 1), ZERO),
    1 / Math.max(1, points.length),
  );
  const scatter = new Float64Array(9);
  for (const p of points) {
    const d = sub(p, middle);
    for (let i = 0; i < 9; i++)
      scatter[i] = (scatter[i] as number) + (d[Math.floor(i / 3)] as number) * (d[i % 3] as number);
  }
  const values = new Float64Array(3);
  const vectors = new Float64Array(9);
  symmetricEigen(scatter, 3, values, vectors);
  let least = 0;
  for (let j = 1; j < 3; j++) if ((values[j] as number) < (values[least] as number)) least = j;
  const normal: Vec3 = [vectors[least] as number, vectors[3 + least] as number, vectors[6 + least] as number];
  const offMm = points.reduce((most, p) => Math.max(most, Math.abs(dot(sub(p, middle), normal))), 0);
  return { point: middle, normal, offMm };
}

/** rad. An end that points within 3 degrees along the line between both ends gives no plane. */
const NO_PLANE_RAD = 0.0524;

/**
 * How far the planes of a row's two ends are turned to each other about the straight line between them, 0 to pi / 2 rad:
 * what keeps every curve between these ends from lying in one plane. Undefined where an end points along that line.
 */
export function planeApartRad(points: readonly Vec3[]): number | undefined {
  const n = points.length;
  if (n < 3) return undefined;
  const [first, last] = [points[0] as Vec3, points[n - 1] as Vec3];
  const across = sub(last, first);
  if (length(across) === 0) return undefined;
  const line = unit(across);
  const start = unit(sub(points[1] as Vec3, first));
  const end = unit(sub(last, points[n - 2] as Vec3));
  if ([start, end].some((d) => Math.abs(Math.sin(angleBetween(d, line))) < NO_PLANE_RAD)) return undefined;
  const apart = angleBetween(unit(rejectFrom(start, line)), unit(rejectFrom(end, line)));
  return Math.min(apart, Math.PI - apart);
}
