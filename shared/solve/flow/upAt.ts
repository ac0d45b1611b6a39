import { degreesToRadians } from '../../base/units.ts';
import { unit, type Vec3 } from '../../base/vec3.ts';
import type { Attitude } from '../../document/project/schema.ts';

/** Straight up in a bay that stands level and at rest. */
export const LEVEL_UP: Vec3 = [0, 0, 1];

/**
 * What fluids take for up in a bay that leans and is driven, a unit vector in the bay frame: against gravity and the
 * acceleration together. The grade makes the bay's X and Y axes rise by the angles stated, so that up has their sines for
 * components; the acceleration, in g along those axes, is added. Exact for oil that has settled; sloshing is not followed.
 */
export function upAt({ gradeDeg, accelerationG }: Pick<Attitude, 'gradeDeg' | 'accelerationG'>): Vec3 {
  const x = Math.sin(degreesToRadians(gradeDeg.x));
  const y = Math.sin(degreesToRadians(gradeDeg.y));
  return unit([x + accelerationG.x, y + accelerationG.y, Math.sqrt(1 - x * x - y * y)]);
}

/** The attitude with its grade alone, as it stands there for long. */
export function standing(attitude: Attitude): Attitude {
  return { ...attitude, accelerationG: { x: 0, y: 0 } };
}
