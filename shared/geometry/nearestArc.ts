import { dot, sub, type Vec3 } from '../base/vec3.ts';

/** Arc length, mm, of the place of a line of points that is nearest to a place; to the straight pieces between them. */
export function nearestArcMm(points: readonly Vec3[], arcLengthMm: readonly number[], place: Vec3): number {
  let best = Number.POSITIVE_INFINITY;
  let at = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const from = points[i] as Vec3;
    const along = sub(points[i + 1] as Vec3, from);
    const off = sub(place, from);
    const square = dot(along, along);
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(off, along) / square));
    const d = dot(off, off) - 2 * t * dot(off, along) + t * t * square;
    if (d >= best) continue;
    best = d;
    at = (arcLengthMm[i] as number) + t * ((arcLengthMm[i + 1] as number) - (arcLengthMm[i] as number));
  }
  return at;
}
