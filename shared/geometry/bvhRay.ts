import { type Bvh, TREE_DEPTH } from './bvhTree.ts';

/** Where a ray first meets a mesh. `triangle` is its number in the mesh; -1 and Infinity where it meets none. */
export interface RayHit {
  distanceMm: number;
  x: number;
  y: number;
  z: number;
  triangle: number;
}

export function newRayHit(): RayHit {
  return { distanceMm: Infinity, x: 0, y: 0, z: 0, triangle: -1 };
}

/** What three roundings can take off a slab's far end: a box is entered rather once too often. */
const SLAB_WIDENING = 1 + 8 * Number.EPSILON;

const pendingCode = new Int32Array(TREE_DEPTH);
const pendingNear = new Float64Array(TREE_DEPTH);
/** The ray in hand: origin, direction, inverses, and which number of a box holds the face it meets first and last. */
const ray = {
  ox: 0,
  oy: 0,
  oz: 0,
  dx: 0,
  dy: 0,
  dz: 0,
  perX: 0,
  perY: 0,
  perZ: 0,
  nearX: 0,
  nearY: 0,
  nearZ: 0,
  farX: 0,
  farY: 0,
  farZ: 0,
};
let winner = -1;

/**
 * The first triangle, seen from either side, that the ray from o (mm) along the unit vector d meets before maxMm (may be
 * Infinity): true, and `out` is filled; false leaves out.distanceMm = Infinity. Hits at distance 0 count. Triangles
 * without area are never hit. Edge tests of neighbours are exact negatives of each other, so no ray slips between two
 * triangles that share an edge. Accuracy: float64 rounding of the coordinates.
 */
export function firstHit(
  bvh: Bvh,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  maxMm: number,
  out: RayHit,
): boolean {
  out.distanceMm = Infinity;
  out.triangle = -1;
  if (!(maxMm > 0) || bvh.triangles.length === 0) return false;
  setRay(ox, oy, oz, dx, dy, dz);
  const distanceMm = searchAlong(bvh, maxMm);
  if (winner < 0) return false;
  out.distanceMm = distanceMm;
  out.triangle = bvh.triangles[winner]!;
  out.x = ox + distanceMm * dx;
  out.y = oy + distanceMm * dy;
  out.z = oz + distanceMm * dz;
  return true;
}

function setRay(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): void {
  ray.ox = ox;
  ray.oy = oy;
  ray.oz = oz;
  ray.dx = dx;
  ray.dy = dy;
  ray.dz = dz;
  ray.perX = 1 / dx;
  ray.perY = 1 / dy;
  ray.perZ = 1 / dz;
  ray.nearX = ray.perX < 0 ? 3 : 0;
  ray.nearY = ray.perY < 0 ? 4 : 1;
  ray.nearZ = ray.perZ < 0 ? 5 : 2;
  ray.farX = 3 - ray.nearX;
  ray.farY = 5 - ray.nearY;
  ray.farZ = 7 - ray.nearZ;
}

function searchAlong(bvh: Bvh, maxMm: number): number {
  const { boxes, children } = bvh;
  winner = -1;
  let best = maxMm;
  let code = bvh.root;
  let pending = 0;
  for (;;) {
    while (code >= 0) {
      const first = boxEntry(boxes, 12 * code, best);
      const second = boxEntry(boxes, 12 * code + 6, best);
      const nearIsFirst = first <= second;
      const near = nearIsFirst ? first : second;
      const far = nearIsFirst ? second : first;
      if (near === Infinity) break;
      const at = 2 * code;
      code = children[nearIsFirst ? at : at + 1]!;
      if (far < Infinity) {
        pendingCode[pending] = children[nearIsFirst ? at + 1 : at]!;
        pendingNear[pending++] = far;
      }
    }
    if (code < 0) best = searchLeaf(bvh, ~code, best);
    do {
      if (pending === 0) return best;
      pending--;
    } while (pendingNear[pending]! > best);
    code = pendingCode[pending]!;
  }
}

/**
 * Where along the ray the box at boxes[at .. at+6] begins, mm, at least 0; Infinity where it is missed before `best`.
 * A ray that runs in a face has 0 * Infinity = NaN there; every comparison with NaN is false, so that face bounds nothing.
 */
function boxEntry(boxes: Float32Array, at: number, best: number): number {
  let near = 0;
  let far = best;
  const x0 = (boxes[at + ray.nearX]! - ray.ox) * ray.perX;
  const x1 = (boxes[at + ray.farX]! - ray.ox) * ray.perX * SLAB_WIDENING;
  const y0 = (boxes[at + ray.nearY]! - ray.oy) * ray.perY;
  const y1 = (boxes[at + ray.farY]! - ray.oy) * ray.perY * SLAB_WIDENING;
  const z0 = (boxes[at + ray.nearZ]! - ray.oz) * ray.perZ;
  const z1 = (boxes[at + ray.farZ]! - ray.oz) * ray.perZ * SLAB_WIDENING;
  if (x0 > near) near = x0;
  if (y0 > near) near = y0;
  if (z0 > near) near = z0;
  if (x1 < far) far = x1;
  if (y1 < far) far = y1;
  if (z1 < far) far = z1;
  return near <= far ? near : Infinity;
}

function searchLeaf(bvh: Bvh, leaf: number, bestSoFar: number): number {
  const from = leaf >> 2;
  const to = from + (leaf & 3);
  let best = bestSoFar;
  for (let slot = from; slot <= to; slot++) {
    const distanceMm = triangleEntry(bvh.corners, 9 * slot);
    if (distanceMm < best) {
      best = distanceMm;
      winner = slot;
    }
  }
  return best;
}

/** Distance along the ray to the triangle, mm, or Infinity: signed volumes of the ray with the edges (Pluecker form). */
function triangleEntry(corners: Float32Array, at: number): number {
  const { dx, dy, dz } = ray;
  const ax = corners[at]! - ray.ox;
  const ay = corners[at + 1]! - ray.oy;
  const az = corners[at + 2]! - ray.oz;
  const bx = corners[at + 3]! - ray.ox;
  const by = corners[at + 4]! - ray.oy;
  const bz = corners[at + 5]! - ray.oz;
  const cx = corners[at + 6]! - ray.ox;
  const cy = corners[at + 7]! - ray.oy;
  const cz = corners[at + 8]! - ray.oz;
  const u = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
  const v = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
  const w = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
  if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) return Infinity;
  const sum = u + v + w;
  if (sum === 0) return Infinity;
  const along =
    (u * (ax * dx + ay * dy + az * dz) + v * (bx * dx + by * dy + bz * dz) + w * (cx * dx + cy * dy + cz * dz)) / sum;
  return along >= 0 ? along : Infinity;
}
