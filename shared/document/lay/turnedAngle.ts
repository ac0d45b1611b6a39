import { dot, sub, unit, type Vec3 } from '../../base/vec3.ts';

/**
 * rad, 0 or more. How far a line of points turns in all, whichever way: the sum of the angles between its pieces, which is
 * the integral of curvature over arc length. Of a smooth line sampled densely it is too small by the half pieces at both ends and,
 * within a bend, by nothing: an arc's chords turn by what the arc turns. Points that coincide are passed over.
 */
export function turnedAngleRad(points: readonly Vec3[]): number {
  const ways = points.slice(1).flatMap((to, i): Vec3[] => {
    const piece = sub(to, points[i] as Vec3);
    return dot(piece, piece) > 0 ? [unit(piece)] : [];
  });
  return ways.slice(1).reduce((sum, way, i) => sum + between(ways[i] as Vec3, way), 0);
}

/** rad. From the chord between two unit vectors: good for small angles, where the cosine is not. */
function between(u: Vec3, v: Vec3): number {
  const d = sub(u, v);
  return 2 * Math.asin(Math.min(1, Math.sqrt(dot(d, d)) / 2));
}
