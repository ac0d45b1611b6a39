import { addScaled, DOWN, dot, type Vec3 } from '../../base/vec3.ts';
import type { RodShape } from '../rod/rodProblem.ts';

/**
 * The pull along a relaxed rod at whichever of its two holds has more, N; below 0 = it pushes on both. At B it is what B holds
 * with; at A what A holds with, which is that and all that loads the rod in between: its weight and what it lies against.
 */
export function pullOf(rod: RodShape, weightN: number): number {
  let carriedN: Vec3 = addScaled(rod.endForceN, DOWN, weightN);
  for (const { forceN, normal } of rod.contacts) carriedN = addScaled(carriedN, normal, forceN);
  return Math.max(dot(rod.endForceN, rod.endDirection), dot(carriedN, rod.startDirection));
}
