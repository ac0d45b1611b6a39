import { cross, distance, dot, length, sub, unit, type Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';

/** Every place from seat to seat, chords cut to `stepMm`: the way that a bubble takes. */
function walk(lay: Lay, stepMm: number): Vec3[] {
  const corners: Vec3[] = [
    lay.ends.a.seatPoint,
    lay.ends.a.bendPoint,
    ...lay.centreline.points,
    lay.ends.b.bendPoint,
    lay.ends.b.seatPoint,
  ];
  return corners.flatMap((p, i) => {
    const q = corners[i + 1];
    if (q === undefined) return [p];
    const n = Math.max(1, Math.ceil(distance(p, q) / stepMm));
    return Array.from(
      { length: n },
      (_, k): Vec3 => [p[0] + ((q[0] - p[0]) * k) / n, p[1] + ((q[1] - p[1]) * k) / n, p[2] + ((q[2] - p[2]) * k) / n],
    );
  });
}

/**
 * Depth of the deepest place that holds air, the slow way: from every place, how far must a bubble go down, whichever way
 * it takes, before it can get out at a seat or climb higher than where it was? mm.
 */
export function humpMm(lay: Lay): number {
  const z = walk(lay, 2).map((p) => p[2]);
  let most = 0;
  for (let i = 0; i < z.length; i++) {
    const down = (step: 1 | -1): number => {
      let low = z[i]!;
      for (let k = i; k >= 0 && k < z.length && z[k]! <= z[i]!; k += step) low = Math.min(low, z[k]!);
      return z[i]! - low;
    };
    most = Math.max(most, Math.min(down(1), down(-1)));
  }
  return most;
}

/** Least radius of the circles through three places of the hose, from skipMm to skipMm + lengthMm from a shoulder, mm. */
export function leastRadiusMm(lay: Lay, skipMm: number, lengthMm: number, side: 'a' | 'b'): number {
  const { points, arcLengthMm } = lay.centreline;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i + 1 < points.length; i++) {
    const s = side === 'a' ? arcLengthMm[i]! : lay.cutLengthMm - arcLengthMm[i]!;
    if (s < skipMm || s > skipMm + lengthMm) continue;
    const [u, v] = [sub(points[i]!, points[i - 1]!), sub(points[i + 1]!, points[i]!)];
    const turn = Math.atan2(length(cross(u, v)), dot(u, v));
    if (turn > 0) least = Math.min(least, (length(u) + length(v)) / 2 / turn);
  }
  return least;
}

/** How far places lie off the best of the planes through three of them, the slow way: an upper bound on the least, mm. */
export function offPlaneMm(points: readonly Vec3[]): number {
  const some = points.filter((_, i) => i % 3 === 0 || i === points.length - 1);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < some.length; i++)
    for (let j = i + 1; j < some.length; j++)
      for (let k = j + 1; k < some.length; k++) {
        const square = cross(sub(some[j]!, some[i]!), sub(some[k]!, some[i]!));
        if (length(square) < 1e-6) continue;
        const normal = unit(square);
        // The plane may be pushed along its normal: half of the spread lies to either side.
        const off = points.map((p) => dot(sub(p, some[i]!), normal));
        least = Math.min(least, (Math.max(...off) - Math.min(...off)) / 2);
      }
  return Number.isFinite(least) ? least : 0;
}
