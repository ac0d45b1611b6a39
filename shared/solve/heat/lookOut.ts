import { type Bvh, firstHit, newRayHit } from '../../geometry/bvh.ts';

/** A ray in the bay frame: origin mm, unit direction. */
export interface Ray {
  ox: number;
  oy: number;
  oz: number;
  dx: number;
  dy: number;
  dz: number;
}

/** Fills ray number `i`. */
export type RaySource = (i: number, ray: Ray) => void;

/** mm. How far what is hot is looked for: across any bay. */
const SIGHT_MM = 1e5;

const hit = newRayHit();
const ray: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 0 };

/**
 * Sends `count` rays out and tells of each that ends on one of the `targets` with nothing between: `seen` gets the ray's
 * number, the target's and the triangle's number in its mesh. Rays that end on a `blocker`, on nothing, or on a target
 * behind another are not told of, or as the other's. Exact to the rounding of `firstHit`. What a ray that ends on no target
 * would have met is never asked, which is what makes it fast.
 */
export function lookOut(
  targets: readonly Bvh[],
  blockers: readonly Bvh[],
  source: RaySource,
  count: number,
  seen: (ray: number, target: number, triangle: number) => void,
): void {
  for (let i = 0; i < count; i++) {
    source(i, ray);
    let nearestMm = SIGHT_MM;
    let target = -1;
    let triangle = -1;
    for (let t = 0; t < targets.length; t++) {
      if (!meets(targets[t]!, nearestMm)) continue;
      nearestMm = hit.distanceMm;
      target = t;
      triangle = hit.triangle;
    }
    if (target >= 0 && !blockers.some((blocker) => meets(blocker, nearestMm))) seen(i, target, triangle);
  }
}

function meets(bvh: Bvh, withinMm: number): boolean {
  return firstHit(bvh, ray.ox, ray.oy, ray.oz, ray.dx, ray.dy, ray.dz, withinMm, hit);
}

/**
 * Sets the direction of a ray that leaves a surface with normal n (unit) as a black surface radiates: cosine-weighted, by
 * Malley's method (a disc evenly filled, lifted onto the half sphere). u, v: in [0, 1).
 */
export function aimByCosine(out: Ray, nx: number, ny: number, nz: number, u: number, v: number): void {
  // Square directions without a branch cut of size: Duff et al., "Building an orthonormal basis, revisited", JCGT 6(1), 2017.
  const sign = nz < 0 ? -1 : 1;
  const a = -1 / (sign + nz);
  const b = nx * ny * a;
  const across = Math.sqrt(u) * Math.cos(2 * Math.PI * v);
  const along = Math.sqrt(u) * Math.sin(2 * Math.PI * v);
  const up = Math.sqrt(1 - u);
  out.dx = across * (1 + sign * nx * nx * a) + along * b + up * nx;
  out.dy = across * sign * b + along * (sign + ny * ny * a) + up * ny;
  out.dz = across * -sign * nx + along * -ny + up * nz;
}

/** A share of rays with how well it is known. */
export interface Share {
  readonly share: number;
  /** one standard error */
  readonly error: number;
}

/**
 * The share that `hits` of `rays` stands for, with the standard error that independent rays would have; evenly spread ones
 * are better. One ray is added on either side, so that none or all seen is not taken for certain.
 */
export function shareOf(hits: number, rays: number): Share {
  const held = (hits + 1) / (rays + 2);
  return { share: hits / rays, error: Math.sqrt((held * (1 - held)) / rays) };
}
