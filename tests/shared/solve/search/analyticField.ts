import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { ClearanceField } from '../../../../shared/solve/search/problem.ts';

/** Obstacles whose distance is known in closed form: margins here are exact, with nothing of the product's in them. */
export type Obstacle =
  | { readonly kind: 'ball'; readonly centre: Vec3; readonly radius: number }
  | { readonly kind: 'block'; readonly min: Vec3; readonly max: Vec3 }
  /** the wall x = `x` without a round hole: distance to a plate of no thickness */
  | { readonly kind: 'wall'; readonly x: number; readonly holes: readonly { y: number; z: number; radius: number }[] }
  | { readonly kind: 'post'; readonly x: number; readonly y: number; readonly radius: number };

export function obstacleDistance(o: Obstacle, x: number, y: number, z: number): number {
  if (o.kind === 'ball') return Math.hypot(x - o.centre[0], y - o.centre[1], z - o.centre[2]) - o.radius;
  if (o.kind === 'post') return Math.hypot(x - o.x, y - o.y) - o.radius;
  if (o.kind === 'block') {
    const out = [0, 1, 2].map((i) => {
      const p = [x, y, z][i] as number;
      return Math.max((o.min[i] as number) - p, p - (o.max[i] as number));
    });
    const outside = Math.hypot(...out.map((d) => Math.max(0, d)));
    return outside > 0 ? outside : Math.max(...out);
  }
  for (const hole of o.holes) {
    const inside = hole.radius - Math.hypot(y - hole.y, z - hole.z);
    if (inside > 0) return Math.hypot(x - o.x, inside);
  }
  return Math.abs(x - o.x);
}

/** Centreline field for a hose that must keep `keepMm` from every obstacle. `blurMm` is what the coarse bound gives away. */
export function analyticField(
  obstacles: readonly Obstacle[],
  keepMm: number,
  bounds: ClearanceField['bounds'],
  blurMm = 17,
): ClearanceField {
  const margin = (x: number, y: number, z: number): number => {
    let least = 1e4;
    for (const o of obstacles) least = Math.min(least, obstacleDistance(o, x, y, z) - keepMm);
    return least;
  };
  return { bounds, lipschitz: 1, marginMm: margin, coarseMarginMm: (x, y, z) => margin(x, y, z) - blurMm };
}
