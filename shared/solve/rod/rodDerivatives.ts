import { placeContacts } from './rodContact.ts';
import type { RodLoads } from './rodLoads.ts';
import { placePulls } from './rodPull.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';
import { placeTwist } from './rodTwist.ts';

/**
 * An orthonormal pair square to each tangent, without branches that jump near the pole
 * (Duff et al. 2017, "Building an orthonormal basis, revisited").
 */
function placeBases(ws: RodWorkspace): void {
  const { bases } = ws;
  const t = ws.state.tangents;
  for (let k = 0; k < ws.edges; k++) {
    const x = t[3 * k]!;
    const y = t[3 * k + 1]!;
    const z = t[3 * k + 2]!;
    const sign = z < 0 ? -1 : 1;
    const a = -1 / (sign + z);
    const b = x * y * a;
    const at = 6 * k;
    bases[at] = 1 + sign * x * x * a;
    bases[at + 1] = sign * b;
    bases[at + 2] = -sign * x;
    bases[at + 3] = b;
    bases[at + 4] = sign + y * y * a;
    bases[at + 5] = -y;
  }
}

/** What a cell's two sides may move by: first and second derivative of each side's direction. */
function cellAt(ws: RodWorkspace, k: number, u: Float64Array, ui: number, v: Float64Array, vi: number): void {
  const { bases, cellGradient, cellHessian, edges } = ws;
  const { poseA, poseB } = ws.state;
  const ux = u[ui]!;
  const uy = u[ui + 1]!;
  const uz = u[ui + 2]!;
  const vx = v[vi]!;
  const vy = v[vi + 1]!;
  const vz = v[vi + 2]!;
  const atStart = k === 0;
  const atEnd = k === edges;
  const A = atStart ? poseA : bases;
  const ai = atStart ? 12 : 6 * (k - 1);
  const B = atEnd ? poseB : bases;
  const bi = atEnd ? 12 : 6 * k;
  const cosine = ux * vx + uy * vy + uz * vz;
  const factor = atStart || atEnd ? 4 * edges : 2 * edges;
  const onePlus = 1 + cosine;
  // f = (1 - c) / (1 + c) = tan^2 of half the angle; its first and second derivative by the cosine.
  const f1 = (-2 * factor) / (onePlus * onePlus);
  const f2 = (4 * factor) / (onePlus * onePlus * onePlus);
  const a0 = A[ai]! * vx + A[ai + 1]! * vy + A[ai + 2]! * vz;
  const b0 = B[bi]! * ux + B[bi + 1]! * uy + B[bi + 2]! * uz;
  // A clock is a single movement: its second axis is empty, and its second derivative is its own, not -1 times u.
  const a1 = atStart ? 0 : A[ai + 3]! * vx + A[ai + 4]! * vy + A[ai + 5]! * vz;
  const b1 = atEnd ? 0 : B[bi + 3]! * ux + B[bi + 4]! * uy + B[bi + 5]! * uz;
  const aa = atStart ? poseA[15]! * vx + poseA[16]! * vy + poseA[17]! * vz : -cosine;
  const bb = atEnd ? poseB[15]! * ux + poseB[16]! * uy + poseB[17]! * uz : -cosine;
  const g = 4 * k;
  cellGradient[g] = f1 * a0;
  cellGradient[g + 1] = f1 * a1;
  cellGradient[g + 2] = f1 * b0;
  cellGradient[g + 3] = f1 * b1;
  const h = 10 * k;
  cellHessian[h] = f1 * aa + f2 * a0 * a0;
  cellHessian[h + 1] = f2 * a0 * a1;
  cellHessian[h + 2] = atStart ? 0 : f1 * aa + f2 * a1 * a1;
  cellHessian[h + 3] = f1 * bb + f2 * b0 * b0;
  cellHessian[h + 4] = f2 * b0 * b1;
  cellHessian[h + 5] = atEnd ? 0 : f1 * bb + f2 * b1 * b1;
  const a0b0 = A[ai]! * B[bi]! + A[ai + 1]! * B[bi + 1]! + A[ai + 2]! * B[bi + 2]!;
  cellHessian[h + 6] = f1 * a0b0 + f2 * a0 * b0;
  cellHessian[h + 7] = atEnd
    ? 0
    : f1 * (A[ai]! * B[bi + 3]! + A[ai + 1]! * B[bi + 4]! + A[ai + 2]! * B[bi + 5]!) + f2 * a0 * b1;
  cellHessian[h + 8] = atStart
    ? 0
    : f1 * (A[ai + 3]! * B[bi]! + A[ai + 4]! * B[bi + 1]! + A[ai + 5]! * B[bi + 2]!) + f2 * a1 * b0;
  cellHessian[h + 9] =
    atStart || atEnd
      ? 0
      : f1 * (A[ai + 3]! * B[bi + 3]! + A[ai + 4]! * B[bi + 4]! + A[ai + 5]! * B[bi + 5]!) + f2 * a1 * b1;
}

/** Suffix sums of the energy's derivatives by the nodes, plus the closure multiplier. */
function placeAdjoint(ws: RodWorkspace, loads: RodLoads): void {
  const { adjoint, multiplier, pressed, pressGradient, edges } = ws;
  let x = multiplier[0]!;
  let y = multiplier[1]!;
  let z = multiplier[2]!;
  for (let k = edges; k >= 0; k--) {
    const share = (k === 0 || k === edges ? 0.5 : 1) / edges;
    x -= share * loads.wx;
    y -= share * loads.wy;
    z -= share * loads.wz;
    if (pressed[k]) {
      x += pressGradient[3 * k]!;
      y += pressGradient[3 * k + 1]!;
      z += pressGradient[3 * k + 2]!;
    }
    adjoint[3 * k] = x;
    adjoint[3 * k + 1] = y;
    adjoint[3 * k + 2] = z;
  }
}

function dot3(a: Float64Array, i: number, b: Float64Array, j: number): number {
  return a[i]! * b[j]! + a[i + 1]! * b[j + 1]! + a[i + 2]! * b[j + 2]!;
}

/** The Lagrangian's derivative by every turn of an edge and by the clocks; the largest entry is the answer. */
export function placeGradient(ws: RodWorkspace): number {
  const { gradient, cellGradient, adjoint, bases, multiplier, edges } = ws;
  const l = 1 / edges;
  let largest = 0;
  for (let k = 0; k < edges; k++) {
    const later = 4 * k + 2;
    const earlier = 4 * k + 4;
    const g0 = cellGradient[later]! + cellGradient[earlier]! + l * dot3(bases, 6 * k, adjoint, 3 * k + 3);
    const g1 = cellGradient[later + 1]! + cellGradient[earlier + 1]! + l * dot3(bases, 6 * k + 3, adjoint, 3 * k + 3);
    gradient[2 * k] = g0;
    gradient[2 * k + 1] = g1;
    largest = Math.max(largest, Math.abs(g0), Math.abs(g1));
  }
  const clockA = cellGradient[0]! + dot3(ws.state.poseA, 3, adjoint, 0);
  const clockB = cellGradient[4 * edges + 2]! - dot3(ws.state.poseB, 3, multiplier, 0);
  gradient[2 * edges] = clockA;
  gradient[2 * edges + 1] = clockB;
  return Math.max(largest, Math.abs(clockA), Math.abs(clockB));
}

/**
 * First and second derivatives at the workspace's state. An edge turns
 * as t + A a - |a|^2 t / 2 + ...; the last term meets every force further along, through the adjoint.
 * Answers whether any node is pressed or pulled.
 */
export function placeDerivatives(ws: RodWorkspace, scale: RodScale, loads: RodLoads): boolean {
  const { tangents, poseA, poseB }: RodState = ws.state;
  const { edges } = ws;
  placeBases(ws);
  cellAt(ws, 0, poseA, 9, tangents, 0);
  for (let k = 1; k < edges; k++) cellAt(ws, k, tangents, 3 * k - 3, tangents, 3 * k);
  cellAt(ws, edges, tangents, 3 * edges - 3, poseB, 9);
  if (loads.twist !== undefined) placeTwist(ws, loads.twist);
  const touching = placeContacts(ws, scale, loads);
  const pulled = placePulls(ws, scale, loads);
  placeAdjoint(ws, loads);
  return touching || pulled;
}
