import { invariant } from '../../base/invariant.ts';
import { SAME_DIRECTION_RAD } from '../../base/tolerances.ts';
import { cross, dot, length, rejectFrom, unit, type Vec3 } from '../../base/vec3.ts';
import type { RodEnd, RodProblem } from './rodProblem.ts';
import type { RodState, RodWorkspace } from './rodState.ts';

/**
 * Twist of a discrete rod (Bergou, Wardetzky, Robinson, Audoly, Grinspun, "Discrete elastic rods", ACM TOG 27(3), 2008):
 * spread evenly, so that one number, Tw, stands for it. Tw hangs on the shape by what carrying a direction along it
 * without twist turns that direction: across a cell from u to v, with b = u x v / (1 + u.v), Tw changes by b.(du + dv).
 *
 * Turns are kept as unit quaternions (w, x, y, z), which tell a rod from the same rod wrung by one whole turn. They do
 * not tell two whole turns from none, as a rod can be brought from the one to the other by swinging its middle round;
 * so Tw is known but for 4 pi, and the nearest to the last one is taken.
 */
export interface TwistLoad {
  /** GJ / EI */
  readonly stiffness: number;
  /** of each end at clock 0: what turns x, y, z into direction, material direction and the third */
  readonly frameA: Float64Array;
  readonly frameB: Float64Array;
  readonly axisA: Vec3 | undefined;
  readonly axisB: Vec3 | undefined;
}

/** Twists that differ by this cannot be told apart by the shape, even as it moves. */
const PERIOD = 4 * Math.PI;

/** Writes the unit quaternion of a rotation given by where it brings x, y and z, starting from its largest entry. */
function quaternionOf(x: Vec3, y: Vec3, z: Vec3, out: Float64Array): void {
  const fours = [
    1 + x[0] + y[1] + z[2],
    1 + x[0] - y[1] - z[2],
    1 - x[0] + y[1] - z[2],
    1 - x[0] - y[1] + z[2],
  ] as const;
  const largest = fours.indexOf(Math.max(...fours));
  const rows = [
    [fours[0], y[2] - z[1], z[0] - x[2], x[1] - y[0]],
    [y[2] - z[1], fours[1], x[1] + y[0], z[0] + x[2]],
    [z[0] - x[2], x[1] + y[0], fours[2], y[2] + z[1]],
    [x[1] - y[0], z[0] + x[2], y[2] + z[1], fours[3]],
  ];
  const row = rows[largest] as number[];
  const norm = Math.hypot(...row);
  for (let i = 0; i < 4; i++) out[i] = row[i]! / norm;
}

function frameOf(end: RodEnd, material: Vec3): Float64Array {
  const off = Math.abs(dot(material, end.direction)) + Math.abs(length(material) - 1);
  invariant(off <= SAME_DIRECTION_RAD, 'relaxRod: material directions must be unit and square to the rod');
  const square = unit(rejectFrom(material, end.direction));
  const out = new Float64Array(4);
  quaternionOf(end.direction, square, cross(end.direction, square), out);
  return out;
}

/** The twist of a problem in the units of the relaxation, if it has any. */
export function twistLoad(problem: RodProblem): TwistLoad | undefined {
  const { twist, a, b } = problem;
  if (twist === undefined) return undefined;
  return {
    stiffness: twist.torsionalStiffnessNmm2 / problem.stiffnessNmm2,
    frameA: frameOf(a, twist.materialA),
    frameB: frameOf(b, twist.materialB),
    axisA: a.kind === 'turning' ? a.axis : undefined,
    axisB: b.kind === 'turning' ? b.axis : undefined,
  };
}

/** Scratch: an end's frame at its clock, and A's frame carried along the rod. */
const frame = new Float64Array(4);
const carried = new Float64Array(4);

/** The frame of an end turned to its clock. */
function turnedFrame(from: Float64Array, axis: Vec3 | undefined, clock: number, out: Float64Array): void {
  out.set(from);
  if (axis === undefined) return;
  const sine = Math.sin(clock / 2);
  turnFurther(out, Math.cos(clock / 2), sine * axis[0], sine * axis[1], sine * axis[2]);
}

/** q becomes (w, x, y, z) after q. */
function turnFurther(q: Float64Array, w: number, x: number, y: number, z: number): void {
  const a = q[0]!;
  const b = q[1]!;
  const c = q[2]!;
  const d = q[3]!;
  q[0] = w * a - x * b - y * c - z * d;
  q[1] = w * b + x * a + y * d - z * c;
  q[2] = w * c + y * a + z * b - x * d;
  q[3] = w * d + z * a + x * c - y * b;
}

/** q becomes the least turn from u to v after q, not kept at unit length: its factor is the cosine of half the angle. */
function carryAcross(q: Float64Array, u: Float64Array, i: number, v: Float64Array, j: number): void {
  const ux = u[i]!;
  const uy = u[i + 1]!;
  const uz = u[i + 2]!;
  const vx = v[j]!;
  const vy = v[j + 1]!;
  const vz = v[j + 2]!;
  const w = (1 + ux * vx + uy * vy + uz * vz) / 2;
  turnFurther(q, w, (uy * vz - uz * vy) / 2, (uz * vx - ux * vz) / 2, (ux * vy - uy * vx) / 2);
}

/** The twist of a placed state, but for whole multiples of 4 pi. */
function twistOf(load: TwistLoad, state: RodState, edges: number): number {
  const { tangents, poseA, poseB } = state;
  turnedFrame(load.frameA, load.axisA, state.clockA, carried);
  carryAcross(carried, poseA, 9, tangents, 0);
  for (let i = 3; i < 3 * edges; i += 3) carryAcross(carried, tangents, i - 3, tangents, i);
  carryAcross(carried, tangents, 3 * edges - 3, poseB, 9);
  turnedFrame(load.frameB, load.axisB, state.clockB, frame);
  // What is left from the carried frame to B's is a turn about B's direction.
  const [a, b, c, d] = carried as unknown as [number, number, number, number];
  const [e, f, g, h] = frame as unknown as [number, number, number, number];
  const cosine = e * a + f * b + g * c + h * d;
  const x = f * a - e * b - g * d + h * c;
  const y = g * a - e * c - h * b + f * d;
  const z = h * a - e * d - f * c + g * b;
  return 2 * Math.atan2(x * poseB[9]! + y * poseB[10]! + z * poseB[11]!, cosine);
}

/** Takes up the twist of the workspace's state, placed, as the one nearest to `nearRad`; 0 without a twist. */
export function startTwist(ws: RodWorkspace, load: TwistLoad | undefined, nearRad: number): void {
  ws.state.twistRad = 0;
  if (load === undefined) return;
  const twist = twistOf(load, ws.state, ws.edges);
  const turns = Math.round((nearRad - twist) / (2 * Math.PI));
  ws.twistLiftRad = 2 * Math.PI * turns;
  ws.state.twistRad = twist + ws.twistLiftRad;
}

/** Follows the twist from the workspace's state to its trial, placed. */
export function followTwist(ws: RodWorkspace, load: TwistLoad): void {
  const twist = twistOf(load, ws.trial, ws.edges) + ws.twistLiftRad;
  ws.trial.twistRad = twist + PERIOD * Math.round((ws.state.twistRad - twist) / PERIOD);
}

/** Energy of the twist, EI/L. */
export function twistEnergy(load: TwistLoad | undefined, state: RodState): number {
  return load === undefined ? 0 : 0.5 * load.stiffness * state.twistRad * state.twistRad;
}

/** Scratch: one side of a cell. Its axes' parts along the other side's direction and along b. */
const alongOther = new Float64Array(4);
const alongB = new Float64Array(4);

/**
 * Adds a cell's part of the twist: its gradient to the column of the twist, and its first and second derivatives times
 * the torque to those of bending. The second derivative by a and c, each a turn of u or of v, is the symmetric part of
 * the change of b.(du + dv); b is square to u and to v, so that t - |a|^2 t / 2 adds nothing, save at a turning end.
 */
function twistCell(ws: RodWorkspace, k: number, torque: number): void {
  const { bases, cellGradient, cellHessian, twistGradient, edges } = ws;
  const { tangents, poseA, poseB } = ws.state;
  const atStart = k === 0;
  const atEnd = k === edges;
  const u = atStart ? poseA : tangents;
  const ui = atStart ? 9 : 3 * k - 3;
  const v = atEnd ? poseB : tangents;
  const vi = atEnd ? 9 : 3 * k;
  const A = atStart ? poseA : bases;
  const ai = atStart ? 12 : 6 * k - 6;
  const B = atEnd ? poseB : bases;
  const bi = atEnd ? 12 : 6 * k;
  const ux = u[ui]!;
  const uy = u[ui + 1]!;
  const uz = u[ui + 2]!;
  const vx = v[vi]!;
  const vy = v[vi + 1]!;
  const vz = v[vi + 2]!;
  const inv = 1 / (1 + ux * vx + uy * vy + uz * vz);
  const bx = (uy * vz - uz * vy) * inv;
  const by = (uz * vx - ux * vz) * inv;
  const bz = (ux * vy - uy * vx) * inv;
  const ofA = atStart ? 1 : 2;
  const ofB = atEnd ? 1 : 2;
  for (let i = 0; i < 2; i++) {
    const a = ai + 3 * i;
    const b = bi + 3 * i;
    alongOther[i] = i < ofA ? A[a]! * vx + A[a + 1]! * vy + A[a + 2]! * vz : 0;
    alongB[i] = i < ofA ? A[a]! * bx + A[a + 1]! * by + A[a + 2]! * bz : 0;
    alongOther[2 + i] = i < ofB ? B[b]! * ux + B[b + 1]! * uy + B[b + 2]! * uz : 0;
    alongB[2 + i] = i < ofB ? B[b]! * bx + B[b + 1]! * by + B[b + 2]! * bz : 0;
  }
  const p0 = alongOther[0]!;
  const p1 = alongOther[1]!;
  const r0 = alongOther[2]!;
  const r1 = alongOther[3]!;
  const q0 = alongB[0]!;
  const q1 = alongB[1]!;
  const s0 = alongB[2]!;
  const s1 = alongB[3]!;
  const g = 4 * k;
  cellGradient[g] = cellGradient[g]! + torque * q0;
  cellGradient[g + 1] = cellGradient[g + 1]! + torque * q1;
  cellGradient[g + 2] = cellGradient[g + 2]! + torque * s0;
  cellGradient[g + 3] = cellGradient[g + 3]! + torque * s1;
  const earlier = atStart ? 2 * edges : 2 * k - 2;
  const later = atEnd ? 2 * edges + 1 : 2 * k;
  twistGradient[earlier] = twistGradient[earlier]! + q0;
  if (!atStart) twistGradient[earlier + 1] = twistGradient[earlier + 1]! + q1;
  twistGradient[later] = twistGradient[later]! + s0;
  if (!atEnd) twistGradient[later + 1] = twistGradient[later + 1]! + s1;
  const h = 10 * k;
  const m = torque * inv;
  const swingA = atStart ? torque * (bx * poseA[15]! + by * poseA[16]! + bz * poseA[17]!) : 0;
  const swingB = atEnd ? torque * (bx * poseB[15]! + by * poseB[16]! + bz * poseB[17]!) : 0;
  cellHessian[h] = cellHessian[h]! - m * q0 * p0 + swingA;
  cellHessian[h + 1] = cellHessian[h + 1]! - 0.5 * m * (q0 * p1 + q1 * p0);
  cellHessian[h + 2] = cellHessian[h + 2]! - m * q1 * p1;
  cellHessian[h + 3] = cellHessian[h + 3]! - m * s0 * r0 + swingB;
  cellHessian[h + 4] = cellHessian[h + 4]! - 0.5 * m * (s0 * r1 + s1 * r0);
  cellHessian[h + 5] = cellHessian[h + 5]! - m * s1 * r1;
  for (let i = 0; i < ofA; i++) {
    const a = ai + 3 * i;
    // The axis of u crossed with u.
    const cx = A[a + 1]! * uz - A[a + 2]! * uy;
    const cy = A[a + 2]! * ux - A[a]! * uz;
    const cz = A[a]! * uy - A[a + 1]! * ux;
    const qi = i === 0 ? q0 : q1;
    for (let j = 0; j < ofB; j++) {
      const b = bi + 3 * j;
      const across = B[b]! * cx + B[b + 1]! * cy + B[b + 2]! * cz;
      const at = h + 6 + 2 * i + j;
      cellHessian[at] = cellHessian[at]! + m * (across - qi * (j === 0 ? r0 : r1));
    }
  }
}

/**
 * Adds the twist to the derivatives of bending at the workspace's state, bases and cells placed. What is left for the
 * sweep is the rank-one part: GJ / EI times `twistGradient` times itself.
 */
export function placeTwist(ws: RodWorkspace, load: TwistLoad): void {
  const { twistGradient, cellGradient, edges } = ws;
  const { poseA, poseB } = ws.state;
  const torque = load.stiffness * ws.state.twistRad;
  twistGradient.fill(0);
  for (let k = 0; k <= edges; k++) twistCell(ws, k, torque);
  // A turning end also turns about its own direction, and the material with it.
  if (load.axisA !== undefined) {
    const rolled = load.axisA[0] * poseA[9]! + load.axisA[1] * poseA[10]! + load.axisA[2] * poseA[11]!;
    twistGradient[2 * edges] = twistGradient[2 * edges]! - rolled;
    cellGradient[0] = cellGradient[0]! - torque * rolled;
  }
  if (load.axisB !== undefined) {
    const rolled = load.axisB[0] * poseB[9]! + load.axisB[1] * poseB[10]! + load.axisB[2] * poseB[11]!;
    twistGradient[2 * edges + 1] = twistGradient[2 * edges + 1]! + rolled;
    cellGradient[4 * edges + 2] = cellGradient[4 * edges + 2]! + torque * rolled;
  }
}
