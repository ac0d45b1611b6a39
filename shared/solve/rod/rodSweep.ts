import type { RodWorkspace } from './rodState.ts';
import { symmetricEigen } from './symmetricEigen.ts';

/**
 * The Newton step as a linear-quadratic control problem, solved by one backward and one forward sweep.
 *
 * Stage k turns edge k by the control a_k (2). The state before it is where node k has moved to (3) and how edge k-1
 * was turned (2); node k+1 moves by l A_k a_k more. What the stages still to come cost is a quadratic in that state
 * and in five columns: 1 (the gradient), the change of the three closure multipliers, and the turn of clock B.
 * At the start the state is one turn of clock A. What is left is a symmetric 5 x 5 system for both clocks and the
 * multipliers. By Haynsworth the whole system has as many negative eigenvalues as the 2 x 2 pivots and the 5 x 5
 * have together; it is a minimum on the closure exactly when that number is three.
 *
 * Twist adds a full matrix of rank one, c g g^T. It is written as one more unknown t with H x + sqrt(c) g t = ... and
 * sqrt(c) g.x - t = 0: a sixth column, a 6 x 6 system, and one more negative eigenvalue.
 */
const CONSTANT = 0;
const CLOCK_B = 4;
const COLUMNS = 5;
/** The column of the twist stands after the others, in arrays of its own, so that a rod without one pays nothing. */
const TWIST = 5;

/** A pivot whose determinant is this small against its entries is a zero one. */
const PIVOT_ROUNDING = 1e-15;

/** Clears the cost-to-go at node N: closure, end cell, clock B. */
function startBackward(ws: RodWorkspace, closure: Float64Array, clockShift: number): void {
  const { pxx, pxa, paa, qx, qa, s, cellHessian, gradient, multiplier, edges } = ws;
  const pose = ws.state.poseB;
  const h = 10 * edges;
  pxx.fill(0);
  pxa.fill(0);
  qx.fill(0);
  qa.fill(0);
  s.fill(0);
  paa[0] = cellHessian[h]!;
  paa[1] = cellHessian[h + 1]!;
  paa[2] = cellHessian[h + 1]!;
  paa[3] = cellHessian[h + 2]!;
  qa[CLOCK_B] = cellHessian[h + 6]!;
  qa[COLUMNS + CLOCK_B] = cellHessian[h + 8]!;
  let curvature = cellHessian[h + 3]! + clockShift;
  for (let i = 0; i < 3; i++) {
    qx[i * COLUMNS + 1 + i] = 1;
    s[(1 + i) * COLUMNS] = closure[i]!;
    s[1 + i] = closure[i]!;
    s[(1 + i) * COLUMNS + CLOCK_B] = -pose[3 + i]!;
    s[CLOCK_B * COLUMNS + 1 + i] = -pose[3 + i]!;
    curvature -= multiplier[i]! * pose[6 + i]!;
  }
  s[CLOCK_B * COLUMNS + CLOCK_B] = curvature;
  s[CLOCK_B * COLUMNS] = gradient[2 * edges + 1]!;
  s[CLOCK_B] = gradient[2 * edges + 1]!;
}

/** Scratch of one stage: l A (3 x 2), the pivot's three entries, feedback matrices before the pivot is applied. */
const H = new Float64Array(3);
const lA = new Float64Array(6);
const G = new Float64Array(6);
const R = new Float64Array(10);
/** The inverse pivot, for the column of the twist. */
const inverse = new Float64Array(3);

/** The pivot of edge k: what its turning costs on the spot and in everything further along. */
function placePivot(ws: RodWorkspace, k: number, shift: number, touched: boolean): void {
  const { pxx, pxa, paa, cellHessian, bases, adjoint } = ws;
  const t = ws.state.tangents;
  const l = 1 / ws.edges;
  const h = 10 * k;
  for (let i = 0; i < 6; i++) lA[i] = l * bases[6 * k + i]!;
  const tension =
    l * (t[3 * k]! * adjoint[3 * k + 3]! + t[3 * k + 1]! * adjoint[3 * k + 4]! + t[3 * k + 2]! * adjoint[3 * k + 5]!);
  H[0] = paa[0]! + cellHessian[h + 3]! + shift - tension;
  H[1] = paa[1]! + cellHessian[h + 4]!;
  H[2] = paa[3]! + cellHessian[h + 5]! + shift - tension;
  if (!touched) return;
  // G = (lA)^T Pxx + Pxa^T, and the pivot gains (lA)^T Pxx lA + (lA)^T Pxa + its transpose.
  for (let r = 0; r < 2; r++) {
    for (let c = 0; c < 3; c++) {
      G[3 * r + c] =
        lA[3 * r]! * pxx[c]! + lA[3 * r + 1]! * pxx[3 + c]! + lA[3 * r + 2]! * pxx[6 + c]! + pxa[2 * c + r]!;
    }
  }
  const x00 = lA[0]! * pxa[0]! + lA[1]! * pxa[2]! + lA[2]! * pxa[4]!;
  const x01 = lA[0]! * pxa[1]! + lA[1]! * pxa[3]! + lA[2]! * pxa[5]!;
  const x11 = lA[3]! * pxa[1]! + lA[4]! * pxa[3]! + lA[5]! * pxa[5]!;
  H[0] = H[0]! + G[0]! * lA[0]! + G[1]! * lA[1]! + G[2]! * lA[2]! + x00;
  H[1] = H[1]! + G[0]! * lA[3]! + G[1]! * lA[4]! + G[2]! * lA[5]! + x01;
  H[2] = H[2]! + G[3]! * lA[3]! + G[4]! * lA[4]! + G[5]! * lA[5]! + x11;
}

/** Clears the column of the twist at node N. */
function startTwistColumn(ws: RodWorkspace, root: number): void {
  ws.twistQx.fill(0);
  ws.twistQa.fill(0);
  ws.twistS.fill(0);
  ws.twistS[CLOCK_B] = root * ws.twistGradient[2 * ws.edges + 1]!;
  ws.twistS[TWIST] = -1;
}

/** Carries the column of the twist past edge k; `R` and `G` must still be those of the edge. */
function carryTwist(ws: RodWorkspace, k: number, root: number, touched: boolean): void {
  const { twistQx, twistQa, twistS, twistGains, twistGradient, cellHessian } = ws;
  const x0 = twistQx[0]!;
  const x1 = twistQx[1]!;
  const x2 = twistQx[2]!;
  const r0 = lA[0]! * x0 + lA[1]! * x1 + lA[2]! * x2 + twistQa[0]! + root * twistGradient[2 * k]!;
  const r1 = lA[3]! * x0 + lA[4]! * x1 + lA[5]! * x2 + twistQa[1]! + root * twistGradient[2 * k + 1]!;
  const t0 = inverse[0]! * r0 + inverse[1]! * r1;
  const t1 = inverse[1]! * r0 + inverse[2]! * r1;
  const h = 10 * k;
  twistGains[2 * k] = t0;
  twistGains[2 * k + 1] = t1;
  twistQa[0] = -(cellHessian[h + 6]! * t0 + cellHessian[h + 7]! * t1);
  twistQa[1] = -(cellHessian[h + 8]! * t0 + cellHessian[h + 9]! * t1);
  for (let c = 0; c < COLUMNS; c++) twistS[c] = twistS[c]! - (R[c]! * t0 + R[COLUMNS + c]! * t1);
  twistS[TWIST] = twistS[TWIST]! - (r0 * t0 + r1 * t1);
  if (!touched) return;
  for (let r = 0; r < 3; r++) twistQx[r] = twistQx[r]! - (G[r]! * t0 + G[3 + r]! * t1);
}

/** How edge k answers the five columns, before its pivot is applied. */
function placeRight(ws: RodWorkspace, k: number): void {
  const { qx, qa, gradient } = ws;
  for (let c = 0; c < COLUMNS; c++) {
    const x0 = qx[c]!;
    const x1 = qx[COLUMNS + c]!;
    const x2 = qx[2 * COLUMNS + c]!;
    R[c] = lA[0]! * x0 + lA[1]! * x1 + lA[2]! * x2 + qa[c]!;
    R[COLUMNS + c] = lA[3]! * x0 + lA[4]! * x1 + lA[5]! * x2 + qa[COLUMNS + c]!;
  }
  R[CONSTANT] = R[CONSTANT]! + gradient[2 * k]!;
  R[COLUMNS + CONSTANT] = R[COLUMNS + CONSTANT]! + gradient[2 * k + 1]!;
}

/** Applies the inverse pivot: edge k's feedback, and the cost-to-go as a function of how edge k-1 was turned. */
function carryTurns(ws: RodWorkspace, k: number, i00: number, i01: number, i11: number): void {
  const { paa, qa, s, cellHessian, gains } = ws;
  const h = 10 * k;
  const at = 20 * k;
  const w00 = cellHessian[h + 6]!;
  const w01 = cellHessian[h + 7]!;
  const w10 = cellHessian[h + 8]!;
  const w11 = cellHessian[h + 9]!;
  const kw00 = i00 * w00 + i01 * w01;
  const kw01 = i00 * w10 + i01 * w11;
  const kw10 = i01 * w00 + i11 * w01;
  const kw11 = i01 * w10 + i11 * w11;
  gains[at + 6] = kw00;
  gains[at + 7] = kw01;
  gains[at + 8] = kw10;
  gains[at + 9] = kw11;
  paa[0] = cellHessian[h]! - (w00 * kw00 + w01 * kw10);
  paa[1] = cellHessian[h + 1]! - (w00 * kw01 + w01 * kw11);
  paa[2] = paa[1]!;
  paa[3] = cellHessian[h + 2]! - (w10 * kw01 + w11 * kw11);
  for (let c = 0; c < COLUMNS; c++) {
    const r0 = i00 * R[c]! + i01 * R[COLUMNS + c]!;
    const r1 = i01 * R[c]! + i11 * R[COLUMNS + c]!;
    gains[at + 10 + c] = r0;
    gains[at + 15 + c] = r1;
    qa[c] = -(w00 * r0 + w01 * r1);
    qa[COLUMNS + c] = -(w10 * r0 + w11 * r1);
    for (let r = 0; r < COLUMNS; r++) s[r * COLUMNS + c] = s[r * COLUMNS + c]! - (R[r]! * r0 + R[COLUMNS + r]! * r1);
  }
}

/** Eliminates edge k; how many negative pivots it had, or NaN where the pivot is zero. */
function eliminate(ws: RodWorkspace, k: number, shift: number, touched: boolean, root: number): number {
  placePivot(ws, k, shift, touched);
  const h00 = H[0]!;
  const h01 = H[1]!;
  const h11 = H[2]!;
  const determinant = h00 * h11 - h01 * h01;
  if (!(Math.abs(determinant) > PIVOT_ROUNDING * (h00 * h00 + h11 * h11 + h01 * h01))) return Number.NaN;
  const i00 = h11 / determinant;
  const i01 = -h01 / determinant;
  const i11 = h00 / determinant;
  placeRight(ws, k);
  carryTurns(ws, k, i00, i01, i11);
  if (touched) carryPositions(ws, k, i00, i01, i11);
  if (root > 0) {
    inverse[0] = i00;
    inverse[1] = i01;
    inverse[2] = i11;
    carryTwist(ws, k, root, touched);
  }
  if (determinant < 0) return 1;
  return h00 > 0 ? 0 : 2;
}

/** The part of an elimination that only rods with pressed nodes further along have. */
function carryPositions(ws: RodWorkspace, k: number, i00: number, i01: number, i11: number): void {
  const { pxx, pxa, qx, cellHessian, gains } = ws;
  const at = 20 * k;
  const w00 = cellHessian[10 * k + 6]!;
  const w01 = cellHessian[10 * k + 7]!;
  const w10 = cellHessian[10 * k + 8]!;
  const w11 = cellHessian[10 * k + 9]!;
  for (let c = 0; c < 3; c++) {
    gains[at + c] = i00 * G[c]! + i01 * G[3 + c]!;
    gains[at + 3 + c] = i01 * G[c]! + i11 * G[3 + c]!;
  }
  for (let r = 0; r < 3; r++) {
    const k0 = gains[at + r]!;
    const k1 = gains[at + 3 + r]!;
    for (let c = 0; c < 3; c++) pxx[3 * r + c] = pxx[3 * r + c]! - (G[c]! * k0 + G[3 + c]! * k1);
    pxa[2 * r] = -(k0 * w00 + k1 * w01);
    pxa[2 * r + 1] = -(k0 * w10 + k1 * w11);
    for (let c = 0; c < COLUMNS; c++) {
      qx[r * COLUMNS + c] = qx[r * COLUMNS + c]! - (G[r]! * gains[at + 10 + c]! + G[3 + r]! * gains[at + 15 + c]!);
    }
  }
}

/** Adds the stiffness of a pressed node to the cost-to-go from it. */
function pressNode(ws: RodWorkspace, k: number): void {
  const { pxx, pressHessian } = ws;
  for (let i = 0; i < 9; i++) pxx[i] = pxx[i]! + pressHessian[9 * k + i]!;
}

/** Gathers the system of n unknowns (clock A, clock B, the multipliers, the twist) from the cost-to-go at node 0. */
function gatherBorder(ws: RodWorkspace, n: number, options: SweepOptions, clockShift: number): void {
  const { border, borderRight, pxx, pxa, paa, qx, qa, s, gradient, adjoint, edges } = ws;
  const p = ws.state.poseA;
  const row = [qa[0]!, qa[1]!, qa[2]!, qa[3]!, qa[4]!];
  let corner = paa[0]! + clockShift;
  for (let i = 0; i < 3; i++) {
    const move = p[3 + i]!;
    corner += move * 2 * pxa[2 * i]! + p[6 + i]! * adjoint[i]!;
    for (let j = 0; j < 3; j++) corner += move * pxx[3 * i + j]! * p[3 + j]!;
    for (let c = 0; c < COLUMNS; c++) row[c] = row[c]! + move * qx[i * COLUMNS + c]!;
  }
  // order: clock A, clock B, multipliers
  const column = [-1, CLOCK_B, 1, 2, 3];
  border[0] = corner;
  borderRight[0] = row[CONSTANT]! + gradient[2 * edges]!;
  for (let i = 1; i < 5; i++) {
    const ci = column[i]!;
    border[i] = row[ci]!;
    border[n * i] = row[ci]!;
    borderRight[i] = s[ci * COLUMNS]!;
    for (let j = 1; j < 5; j++) border[n * i + j] = s[ci * COLUMNS + column[j]!]!;
  }
  if (n > TWIST) gatherTwist(ws, options.twist);
  if (!options.turningA) blank(ws, 0, n);
  if (!options.turningB) blank(ws, 1, n);
}

/** The last row and column of the system: the twist's. */
function gatherTwist(ws: RodWorkspace, twist: number): void {
  const { border, borderRight, twistQx, twistQa, twistS, twistGradient, edges } = ws;
  const p = ws.state.poseA;
  const entries = [0, twistS[CLOCK_B]!, twistS[1]!, twistS[2]!, twistS[3]!, twistS[TWIST]!];
  entries[0] = twistQa[0]! + Math.sqrt(twist) * twistGradient[2 * edges]!;
  for (let i = 0; i < 3; i++) entries[0] += p[3 + i]! * twistQx[i]!;
  for (const [i, entry] of entries.entries()) {
    border[6 * i + TWIST] = entry;
    border[6 * TWIST + i] = entry;
  }
  borderRight[TWIST] = twistS[CONSTANT]!;
}

/** A clock that cannot turn: a row of its own with pivot 1, so that the count of negative ones is unmoved. */
function blank(ws: RodWorkspace, i: number, n: number): void {
  for (let j = 0; j < n; j++) {
    ws.border[n * i + j] = 0;
    ws.border[n * j + i] = 0;
  }
  ws.border[(n + 1) * i] = 1;
  ws.borderRight[i] = 0;
}

export interface SweepOptions {
  readonly turningA: boolean;
  readonly turningB: boolean;
  readonly touching: boolean;
  /** GJ / EI, the factor of the twist's rank-one part; 0 without one */
  readonly twist: number;
  /** added to the Hessian's diagonal per edge; N times as much on a clock */
  readonly shift: number;
}

/**
 * Factors the Newton system of the derivatives in the workspace, with `gradient` and `closure` on the right.
 * Answers how many negative eigenvalues it has (3 = convex on the closure; 4 with a twist), or NaN where it is singular.
 */
export function sweepBack(ws: RodWorkspace, closure: Float64Array, options: SweepOptions): number {
  const { edges, pressed } = ws;
  const clockShift = options.shift * edges;
  const root = Math.sqrt(options.twist);
  const n = root > 0 ? 6 : 5;
  startBackward(ws, closure, clockShift);
  if (root > 0) startTwistColumn(ws, root);
  ws.gains.fill(0);
  let negative = 0;
  let touched = false;
  for (let k = edges - 1; k >= 0; k--) {
    negative += eliminate(ws, k, options.shift, touched, root);
    if (Number.isNaN(negative)) return negative;
    if (options.touching && pressed[k]) {
      touched = true;
      pressNode(ws, k);
    }
  }
  gatherBorder(ws, n, options, clockShift);
  ws.borderGiven.set(ws.borderRight);
  ws.unknowns = n;
  symmetricEigen(ws.border, n, ws.eigenvalues, ws.eigenvectors);
  for (let i = 0; i < n; i++) {
    if (ws.eigenvalues[i] === 0) return Number.NaN;
    if (ws.eigenvalues[i]! < 0) negative++;
  }
  return negative;
}

/**
 * The step of the system last factored, with `extra` added to its closure: turns of the edges and of the clocks into
 * `step` (2N + 2), changes of the multipliers into `multiplierStep`.
 */
export function sweepForward(
  ws: RodWorkspace,
  extra: Float64Array | undefined,
  step: Float64Array,
  multiplierStep: Float64Array,
): void {
  const { edges, gains, bases, borderGiven, borderRight, eigenvalues, eigenvectors, twistGains, unknowns: n } = ws;
  borderRight.set(borderGiven);
  if (extra) for (let i = 0; i < 3; i++) borderRight[2 + i] = borderRight[2 + i]! + extra[i]!;
  const w: [number, number, number, number, number, number] = [0, 0, 0, 0, 0, 0];
  for (let j = 0; j < n; j++) {
    let along = 0;
    for (let i = 0; i < n; i++) along += eigenvectors[n * i + j]! * borderRight[i]!;
    along /= eigenvalues[j]!;
    for (let i = 0; i < n; i++) w[i] = w[i]! - eigenvectors[n * i + j]! * along;
  }
  const [clockA, clockB, m0, m1, m2, twist] = w;
  step[2 * edges] = clockA;
  step[2 * edges + 1] = clockB;
  multiplierStep[0] = m0;
  multiplierStep[1] = m1;
  multiplierStep[2] = m2;
  const pose = ws.state.poseA;
  const l = 1 / edges;
  let x = pose[3]! * clockA;
  let y = pose[4]! * clockA;
  let z = pose[5]! * clockA;
  let e0 = clockA;
  let e1 = 0;
  for (let k = 0; k < edges; k++) {
    const g = 20 * k;
    const b = 6 * k;
    let a0 = -(
      gains[g]! * x +
      gains[g + 1]! * y +
      gains[g + 2]! * z +
      gains[g + 6]! * e0 +
      gains[g + 7]! * e1 +
      gains[g + 10]! +
      gains[g + 11]! * m0 +
      gains[g + 12]! * m1 +
      gains[g + 13]! * m2 +
      gains[g + 14]! * clockB
    );
    let a1 = -(
      gains[g + 3]! * x +
      gains[g + 4]! * y +
      gains[g + 5]! * z +
      gains[g + 8]! * e0 +
      gains[g + 9]! * e1 +
      gains[g + 15]! +
      gains[g + 16]! * m0 +
      gains[g + 17]! * m1 +
      gains[g + 18]! * m2 +
      gains[g + 19]! * clockB
    );
    if (n > TWIST) {
      a0 -= twistGains[2 * k]! * twist;
      a1 -= twistGains[2 * k + 1]! * twist;
    }
    step[2 * k] = a0;
    step[2 * k + 1] = a1;
    x += l * (bases[b]! * a0 + bases[b + 3]! * a1);
    y += l * (bases[b + 1]! * a0 + bases[b + 4]! * a1);
    z += l * (bases[b + 2]! * a0 + bases[b + 5]! * a1);
    e0 = a0;
    e1 = a1;
  }
}
