import { type RandomSource, seededRandom } from '../../shared/base/random.ts';
import { scale, type Vec3 } from '../../shared/base/vec3.ts';
import type { Pose } from '../../shared/geometry/arcLinePath.ts';

export interface PosePair {
  readonly from: Pose;
  readonly to: Pose;
  /** radii between the points */
  readonly apart: number;
}

const NEAREST = 0.5;
const FARTHEST = 10;

/** Pairs of poses in radii: 0.5 to 10 apart, evenly over the logarithm; directions evenly over the sphere. */
export function posePairs(seed: number, count: number): PosePair[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const apart = NEAREST * (FARTHEST / NEAREST) ** random();
    const point = scale(anyDirection(random), apart);
    return {
      apart,
      from: { point: [0, 0, 0], direction: anyDirection(random) },
      to: { point, direction: anyDirection(random) },
    };
  });
}

export function anyDirection(random: RandomSource): Vec3 {
  const z = 2 * random() - 1;
  const turn = 2 * Math.PI * random();
  const flat = Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), z];
}
