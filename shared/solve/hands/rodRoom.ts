import { addScaled, distance, lerp, sub, type Vec3 } from '../../base/vec3.ts';
import type { Bvh } from '../../geometry/bvh.ts';
import { nearestDistance } from '../../geometry/bvh.ts';
import type { Ball } from './balls.ts';

/** A straight round rod with ball ends. mm, bay frame. */
export interface Rod {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radiusMm: number;
}

/** mm. A rod that is nearer than this to a thing without touching it may be told to touch it. */
const LEAST_STEP_MM = 0.5;

/**
 * Whether a rod touches neither the mesh nor the balls. Marches along the rod: where the nearest thing is d away, the rod is
 * clear for d less its radius further on. Never true for a rod that touches; false for a few that pass by less than half
 * a millimetre.
 */
export function isRodFree(rod: Rod, bvhs: readonly Bvh[], balls: readonly Ball[] = []): boolean {
  return balls.every((ball) => ballGap(rod, ball) > 0) && bvhs.every((bvh) => isClearOf(rod, bvh));
}

function isClearOf({ from, to, radiusMm }: Rod, bvh: Bvh): boolean {
  const lengthMm = distance(from, to);
  for (let along = 0; ; ) {
    const [x, y, z] = lengthMm > 0 ? lerp(from, to, along / lengthMm) : from;
    const gapMm = nearestDistance(bvh, x, y, z, radiusMm + lengthMm - along + LEAST_STEP_MM) - radiusMm;
    if (!(gapMm > 0)) return false;
    if (along + gapMm >= lengthMm) return true;
    if (gapMm < LEAST_STEP_MM) return false;
    along += gapMm;
  }
}

function ballGap({ from, to, radiusMm }: Rod, ball: Ball): number {
  const way = sub(to, from);
  const squared = way[0] ** 2 + way[1] ** 2 + way[2] ** 2;
  const off = sub(ball.centre, from);
  const along = off[0] * way[0] + off[1] * way[1] + off[2] * way[2];
  const t = squared > 0 ? Math.min(1, Math.max(0, along / squared)) : 0;
  return distance(ball.centre, addScaled(from, way, t)) - radiusMm - ball.radiusMm;
}
