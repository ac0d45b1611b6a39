import { addScaled, dot, scale, sub, type Vec3, ZERO } from '../../base/vec3.ts';
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
