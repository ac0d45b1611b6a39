import { cross, dot, scale, sub, unit, type Vec3 } from '../../shared/base/vec3.ts';
import { type Bvh, buildBvh, firstHit, newRayHit } from '../../shared/geometry/bvh.ts';
import { partOfTriangle } from '../../shared/geometry/triMesh.ts';
import type { OpenDocument } from '../state/documentStore.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** A look into the bay: from a point along a unit direction. */
export interface BayRay {
  readonly from: Vec3;
  readonly along: Vec3;
}

/** A place on the bay's surface. */
export interface BayHit {
  readonly point: Vec3;
  /** unit, out of the surface towards where the look comes from: scans are not consistently wound */
  readonly normal: Vec3;
  readonly part: string;
}

/** mm by which a look goes on behind a part that is off. */
const BEHIND_MM = 0.01;
/** Surfaces of parts that are off, one behind the other, that a look goes through at most. */
const MOST_LAYERS = 200;

const indexes = new WeakMap<Bay, Bvh>();

/** The index of a bay, made when first looked into: a second or so on a scan of a million triangles. */
function indexOf(bay: Bay): Bvh {
  const known = indexes.get(bay);
  if (known !== undefined) return known;
  const made = buildBvh(bay);
  indexes.set(bay, made);
  return made;
}

/** The first place of the bay that a look meets, what `isOff` says of a part at a place looked through; null where it meets none. */
export function pickBay(bay: Bay, ray: BayRay, isOff: (part: string, at: Vec3) => boolean): BayHit | null {
  const bvh = indexOf(bay);
  const hit = newRayHit();
  let [x, y, z] = ray.from;
  const [dx, dy, dz] = ray.along;
  for (let layer = 0; layer < MOST_LAYERS; layer++) {
    if (!firstHit(bvh, x, y, z, dx, dy, dz, Number.POSITIVE_INFINITY, hit)) return null;
    const part = partOfTriangle(bay, hit.triangle).name;
    const at: Vec3 = [hit.x, hit.y, hit.z];
    if (!isOff(part, at)) return { point: at, normal: facing(bay, hit.triangle, ray.along), part };
    x = hit.x + dx * BEHIND_MM;
    y = hit.y + dy * BEHIND_MM;
    z = hit.z + dz * BEHIND_MM;
  }
  return null;
}

function facing({ positions, indices }: Bay, triangle: number, along: Vec3): Vec3 {
  const [a, b, c] = [0, 1, 2].map((i): Vec3 => {
    const at = (indices[triangle * 3 + i] as number) * 3;
    return [positions[at] as number, positions[at + 1] as number, positions[at + 2] as number];
  }) as [Vec3, Vec3, Vec3];
  const normal = unit(cross(sub(b, a), sub(c, a)));
  return dot(normal, along) > 0 ? scale(normal, -1) : normal;
}
