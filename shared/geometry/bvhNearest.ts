import { type Bvh, TREE_DEPTH } from './bvhTree.ts';
import { nearestOnTriangle, trianglePointSquared } from './trianglePoint.ts';

/** Where a mesh comes nearest to a point. `triangle` is its number in the mesh; -1 and Infinity where none was found. */
export interface Nearest {
  distanceMm: number;
  x: number;
  y: number;
  z: number;
  triangle: number;
}

export function newNearest(): Nearest {
  return { distanceMm: Infinity, x: 0, y: 0, z: 0, triangle: -1 };
}

/** Pending branches of the one query that runs: its code, and the squared distance to its box. */
const pendingCode = new Int32Array(TREE_DEPTH);
const pendingSquared = new Float64Array(TREE_DEPTH);
/** The winner of the last search: its slot, or -1. */
let winner = -1;

/**
 * The exact nearest point of the triangles to (x, y, z), mm, where it is nearer than boundMm (may be Infinity): true, and
 * `out` is filled. False leaves out.distanceMm = Infinity, out.triangle = -1. Unsigned: real meshes have no inside.
 * A tight bound makes it several times faster. Accuracy: float64 rounding of the coordinates (1e-12 mm in a bay).
 */
export function nearestPoint(bvh: Bvh, x: number, y: number, z: number, boundMm: number, out: Nearest): boolean {
  const squared = search(bvh, x, y, z, boundMm);
  out.distanceMm = Math.sqrt(squared);
  out.triangle = -1;
  if (winner < 0) return false;
  out.triangle = bvh.triangles[winner]!;
  nearestOnTriangle(bvh.corners, 9 * winner, x, y, z, out);
  return true;
}

/** The exact distance from (x, y, z) to the triangles, mm, or Infinity where none lies nearer than boundMm. */
export function nearestDistance(bvh: Bvh, x: number, y: number, z: number, boundMm: number): number {
  return Math.sqrt(search(bvh, x, y, z, boundMm));
}

/** Descends near-first, keeping the best squared distance; sets `winner`. Infinity where nothing beats the bound. */
function search(bvh: Bvh, x: number, y: number, z: number, boundMm: number): number {
  const { boxes, children } = bvh;
  winner = -1;
  if (!(boundMm > 0) || bvh.triangles.length === 0) return Infinity;
  let best = boundMm * boundMm;
  let code = bvh.root;
  let pending = 0;
  for (;;) {
    while (code >= 0) {
      const first = boxSquared(boxes, 12 * code, x, y, z);
      const second = boxSquared(boxes, 12 * code + 6, x, y, z);
      const nearIsFirst = first <= second;
      const near = nearIsFirst ? first : second;
      const far = nearIsFirst ? second : first;
      if (!(near < best)) break;
      const at = 2 * code;
      code = children[nearIsFirst ? at : at + 1]!;
      if (far < best) {
        pendingCode[pending] = children[nearIsFirst ? at + 1 : at]!;
        pendingSquared[pending++] = far;
      }
    }
    if (code < 0) best = searchLeaf(bvh, ~code, x, y, z, best);
    do {
      if (pending === 0) return winner < 0 ? Infinity : best;
      pending--;
    } while (!(pendingSquared[pending]! < best));
    code = pendingCode[pending]!;
  }
}

function searchLeaf(bvh: Bvh, leaf: number, x: number, y: number, z: number, bestSoFar: number): number {
  const from = leaf >> 2;
  const to = from + (leaf & 3);
  let best = bestSoFar;
  for (let slot = from; slot <= to; slot++) {
    const squared = trianglePointSquared(bvh.corners, 9 * slot, x, y, z);
    if (squared < best) {
      best = squared;
      winner = slot;
    }
  }
  return best;
}

/** Squared distance from the point to the box at boxes[at .. at+6], 0 inside. */
function boxSquared(boxes: Float32Array, at: number, x: number, y: number, z: number): number {
  const dx = Math.max(boxes[at]! - x, x - boxes[at + 3]!, 0);
  const dy = Math.max(boxes[at + 1]! - y, y - boxes[at + 4]!, 0);
  const dz = Math.max(boxes[at + 2]! - z, z - boxes[at + 5]!, 0);
  return dx * dx + dy * dy + dz * dz;
}
