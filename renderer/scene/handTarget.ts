import { addScaled, dot, sub, type Vec3 } from '../../shared/base/vec3.ts';
import type { BayHit, BayRay } from './pickBay.ts';

/** Where a look meets the plane through a point square to the way the camera looks; the point itself where it never does. */
export function onViewPlane(ray: BayRay, through: Vec3, eyeAlong: Vec3): Vec3 {
  const facing = dot(ray.along, eyeAlong);
  if (Math.abs(facing) < GRAZING) return through;
  return addScaled(ray.from, ray.along, dot(sub(through, ray.from), eyeAlong) / facing);
}

/** Cosine under which a look runs along the plane and meets it anywhere. */
const GRAZING = 1e-3;

/** The hose's middle when it lies on a surface there, so far off it. */
export function onSurface(hit: BayHit, standOffMm: number): Vec3 {
  return addScaled(hit.point, hit.normal, standOffMm);
}
