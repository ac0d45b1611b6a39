/**
 * The squared distance (mm^2) from the point (x, y, z) to the triangle whose corners a, b, c stand at corners[at .. at+9].
 * Exact up to float64 rounding for every triangle: one without area is taken as the segments or the point it is.
 *
 * With n = ab x ac and q = n x ap, ab.q and ac.q are the point's signed places across the edges ab and ac, in units of
 * |n|^2. Float32 corners make ab, ac and their products exact in float64, so n has full relative accuracy even for
 * needles, where the usual dot-product tests cancel. Outside, only the edges that the point lies outside of can hold the
 * nearest point (it lies in the normal cone of a point of such an edge).
 */
export function trianglePointSquared(corners: Float32Array, at: number, x: number, y: number, z: number): number {
  const ax = corners[at]!;
  const ay = corners[at + 1]!;
  const az = corners[at + 2]!;
  const abx = corners[at + 3]! - ax;
  const aby = corners[at + 4]! - ay;
  const abz = corners[at + 5]! - az;
  const acx = corners[at + 6]! - ax;
  const acy = corners[at + 7]! - ay;
  const acz = corners[at + 8]! - az;
  const px = x - ax;
  const py = y - ay;
  const pz = z - az;
  const nx = aby * acz - abz * acy;
  const ny = abz * acx - abx * acz;
  const nz = abx * acy - aby * acx;
  const nn = nx * nx + ny * ny + nz * nz;
  const qx = ny * pz - nz * py;
  const qy = nz * px - nx * pz;
  const qz = nx * py - ny * px;
  const acrossAb = abx * qx + aby * qy + abz * qz;
  const acrossAc = acx * qx + acy * qy + acz * qz;
  const flat = !(nn > 0);
  const outsideAb = flat || acrossAb > 0;
  const outsideAc = flat || acrossAc < 0;
  const outsideBc = flat || acrossAc - acrossAb > nn;
  if (!outsideAb && !outsideAc && !outsideBc) {
    const height = nx * px + ny * py + nz * pz;
    return (height * height) / nn;
  }
  let best = Infinity;
  if (outsideAb) best = segmentSquared(px, py, pz, abx, aby, abz);
  if (outsideAc) best = Math.min(best, segmentSquared(px, py, pz, acx, acy, acz));
  if (outsideBc) best = Math.min(best, segmentSquared(px - abx, py - aby, pz - abz, acx - abx, acy - aby, acz - abz));
  return best;
}

/** Squared distance from p to the segment from the origin to e; a segment without length is its point. */
function segmentSquared(px: number, py: number, pz: number, ex: number, ey: number, ez: number): number {
  const s = segmentPlace(px, py, pz, ex, ey, ez);
  const dx = px - s * ex;
  const dy = py - s * ey;
  const dz = pz - s * ez;
  return dx * dx + dy * dy + dz * dz;
}

/** The place along the segment origin-e, 0 to 1, nearest to p. */
function segmentPlace(px: number, py: number, pz: number, ex: number, ey: number, ez: number): number {
  const along = px * ex + py * ey + pz * ez;
  if (!(along > 0)) return 0;
  const ee = ex * ex + ey * ey + ez * ez;
  return along < ee ? along / ee : 1;
}

/** A point that a query writes to. */
export interface PointOut {
  x: number;
  y: number;
  z: number;
}

/** As `trianglePointSquared`, but answers where on the triangle the nearest point lies, mm. */
export function nearestOnTriangle(
  corners: Float32Array,
  at: number,
  x: number,
  y: number,
  z: number,
  out: PointOut,
): void {
  const ax = corners[at]!;
  const ay = corners[at + 1]!;
  const az = corners[at + 2]!;
  const abx = corners[at + 3]! - ax;
  const aby = corners[at + 4]! - ay;
  const abz = corners[at + 5]! - az;
  const acx = corners[at + 6]! - ax;
  const acy = corners[at + 7]! - ay;
  const acz = corners[at + 8]! - az;
  const nx = aby * acz - abz * acy;
  const ny = abz * acx - abx * acz;
  const nz = abx * acy - aby * acx;
  const nn = nx * nx + ny * ny + nz * nz;
  const qx = ny * (z - az) - nz * (y - ay);
  const qy = nz * (x - ax) - nx * (z - az);
  const qz = nx * (y - ay) - ny * (x - ax);
  const acrossAb = abx * qx + aby * qy + abz * qz;
  const acrossAc = acx * qx + acy * qy + acz * qz;
  const flat = !(nn > 0);
  target.x = x;
  target.y = y;
  target.z = z;
  let best = Infinity;
  if (flat || acrossAb > 0) best = nearerOnEdge(ax, ay, az, abx, aby, abz, best, out);
  if (flat || acrossAc < 0) best = nearerOnEdge(ax, ay, az, acx, acy, acz, best, out);
  if (flat || acrossAc - acrossAb > nn)
    best = nearerOnEdge(ax + abx, ay + aby, az + abz, acx - abx, acy - aby, acz - abz, best, out);
  if (best < Infinity) return;
  const height = (nx * (x - ax) + ny * (y - ay) + nz * (z - az)) / nn;
  out.x = x - height * nx;
  out.y = y - height * ny;
  out.z = z - height * nz;
}

/** The point that `nearerOnEdge` measures from: set before, so that no query allocates. */
const target: PointOut = { x: 0, y: 0, z: 0 };

/** Writes the point of the edge from f along e nearest to `target` where it beats `best` (mm^2); returns the better. */
function nearerOnEdge(
  fx: number,
  fy: number,
  fz: number,
  ex: number,
  ey: number,
  ez: number,
  best: number,
  out: PointOut,
): number {
  const px = target.x - fx;
  const py = target.y - fy;
  const pz = target.z - fz;
  const s = segmentPlace(px, py, pz, ex, ey, ez);
  const squared = (px - s * ex) ** 2 + (py - s * ey) ** 2 + (pz - s * ez) ** 2;
  if (squared >= best) return best;
  out.x = fx + s * ex;
  out.y = fy + s * ey;
  out.z = fz + s * ez;
  return squared;
}
