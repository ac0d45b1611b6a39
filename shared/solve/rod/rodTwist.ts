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
  const norm = Math.sqrt(row.reduce((sum, part) => sum + part * part, 0));
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

function dot3(a: Float64Array, i: number, b: Float64Array, j: number): number {
  return a[i]! * b[j]! + a[i + 1]! * b[j + 1]! + a[i + 2]! * b[j + 2]!;
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
  ws.trial.twistRad = 0;
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

/**
 * Adds an inner cell's part of the twist: its gradient to the column of the twist, and its first and second derivatives
 * times the torque to those of bending. The second derivative by a and c, each a turn of u or of v, is the symmetric part
 * of the change of b.(du + dv); b is square to u and to v, so that the term -|a|^2 t / 2 of a turn adds nothing. The
 * bases are right-handed about their edges, which leaves only products of u, v and the bases: b.a0 = -a1.v / (1 + u.v).
 */
function twistCell(ws: RodWorkspace, k: number, torque: number): void {
  const { bases, cellGradient, cellHessian, twistGradient } = ws;
  const t = ws.state.tangents;
  const u = 3 * k - 3;
  const v = 3 * k;
  const a = 6 * k - 6;
  const b = 6 * k;
  const inv = 1 / (1 + dot3(t, u, t, v));
  const a0v = dot3(bases, a, t, v);
  const a1v = dot3(bases, a + 3, t, v);
  const b0u = dot3(bases, b, t, u);
  const b1u = dot3(bases, b + 3, t, u);
  const a0 = -inv * a1v;
  const a1 = inv * a0v;
  const b0 = inv * b1u;
  const b1 = -inv * b0u;
  twistGradient[2 * k - 2] = twistGradient[2 * k - 2]! + a0;
  twistGradient[2 * k - 1] = twistGradient[2 * k - 1]! + a1;
  twistGradient[2 * k] = b0;
  twistGradient[2 * k + 1] = b1;
  const g = 4 * k;
  cellGradient[g] = cellGradient[g]! + torque * a0;
  cellGradient[g + 1] = cellGradient[g + 1]! + torque * a1;
  cellGradient[g + 2] = cellGradient[g + 2]! + torque * b0;
  cellGradient[g + 3] = cellGradient[g + 3]! + torque * b1;
  const h = 10 * k;
  const m = torque * inv;
  cellHessian[h] = cellHessian[h]! - m * a0 * a0v;
  cellHessian[h + 1] = cellHessian[h + 1]! - 0.5 * m * (a0 * a1v + a1 * a0v);
  cellHessian[h + 2] = cellHessian[h + 2]! - m * a1 * a1v;
  cellHessian[h + 3] = cellHessian[h + 3]! - m * b0 * b0u;
  cellHessian[h + 4] = cellHessian[h + 4]! - 0.5 * m * (b0 * b1u + b1 * b0u);
  cellHessian[h + 5] = cellHessian[h + 5]! - m * b1 * b1u;
  cellHessian[h + 6] = cellHessian[h + 6]! - m * (dot3(bases, a + 3, bases, b) + a0 * b0u);
  cellHessian[h + 7] = cellHessian[h + 7]! - m * (dot3(bases, a + 3, bases, b + 3) + a0 * b1u);
  cellHessian[h + 8] = cellHessian[h + 8]! + m * (dot3(bases, a, bases, b) - a1 * b0u);
  cellHessian[h + 9] = cellHessian[h + 9]! + m * (dot3(bases, a, bases, b + 3) - a1 * b1u);
}

/**
 * The same for the half cell at an end, between the end's direction and its edge. The end turns by its clock alone, and
 * not about an axis square to its direction: the direction's second derivative meets b, and the turn about itself takes
 * the material with it. `sign` is -1 at A, where turning the material lowers the twist, and 1 at B.
 */
function twistEndCell(ws: RodWorkspace, k: number, torque: number, axis: Vec3 | undefined, sign: 1 | -1): void {
  const { bases, cellGradient, cellHessian, twistGradient, edges } = ws;
  const t = ws.state.tangents;
  const pose = sign < 0 ? ws.state.poseA : ws.state.poseB;
  const edge = sign < 0 ? 0 : edges - 1;
  const e = 3 * edge;
  const inv = 1 / (1 + dot3(pose, 9, t, e));
  const d: Vec3 = [pose[9]!, pose[10]!, pose[11]!];
  // b = u x v / (1 + u.v), with the end as u at A and as v at B.
  const [bx, by, bz] = cross(d, [-sign * inv * t[e]!, -sign * inv * t[e + 1]!, -sign * inv * t[e + 2]!]);
  const b = Float64Array.of(bx, by, bz);
  const alongEdge = [dot3(bases, 6 * edge, b, 0), dot3(bases, 6 * edge + 3, b, 0)] as const;
  const edgeAlongEnd = [dot3(bases, 6 * edge, pose, 9), dot3(bases, 6 * edge + 3, pose, 9)] as const;
  const clock = dot3(pose, 12, b, 0);
  const clockAlongEdge = dot3(pose, 12, t, e);
  const rolled = axis === undefined ? 0 : sign * dot(axis, d);
  twistGradient[2 * edge] = twistGradient[2 * edge]! + alongEdge[0];
  twistGradient[2 * edge + 1] = twistGradient[2 * edge + 1]! + alongEdge[1];
  twistGradient[sign < 0 ? 2 * edges : 2 * edges + 1] = clock + rolled;
  const [gEnd, gEdge] = sign < 0 ? [4 * k, 4 * k + 2] : [4 * k + 2, 4 * k];
  cellGradient[gEnd] = cellGradient[gEnd]! + torque * (clock + rolled);
  cellGradient[gEdge] = cellGradient[gEdge]! + torque * alongEdge[0];
  cellGradient[gEdge + 1] = cellGradient[gEdge + 1]! + torque * alongEdge[1];
  const [hEnd, hEdge] = sign < 0 ? [10 * k, 10 * k + 3] : [10 * k + 3, 10 * k];
  const m = torque * inv;
  cellHessian[hEnd] = cellHessian[hEnd]! - m * clock * clockAlongEdge + torque * dot3(pose, 15, b, 0);
  cellHessian[hEdge] = cellHessian[hEdge]! - m * alongEdge[0] * edgeAlongEnd[0];
  cellHessian[hEdge + 1] =
    cellHessian[hEdge + 1]! - 0.5 * m * (alongEdge[0] * edgeAlongEnd[1] + alongEdge[1] * edgeAlongEnd[0]);
  cellHessian[hEdge + 2] = cellHessian[hEdge + 2]! - m * alongEdge[1] * edgeAlongEnd[1];
  // The edge crossed with its axis 0 is its axis 1; with its axis 1, minus its axis 0.
  const coupling = [
    -sign * dot3(bases, 6 * edge + 3, pose, 12) - alongEdge[0] * clockAlongEdge,
    sign * dot3(bases, 6 * edge, pose, 12) - alongEdge[1] * clockAlongEdge,
  ] as const;
  // Clock A meets the later edge's axes at 6 and 7, clock B the earlier one's at 6 and 8.
  const second = sign < 0 ? 7 : 8;
  cellHessian[10 * k + 6] = cellHessian[10 * k + 6]! + m * coupling[0];
  cellHessian[10 * k + second] = cellHessian[10 * k + second]! + m * coupling[1];
}

/**
 * Adds the twist to the derivatives of bending at the workspace's state, bases and cells placed. What is left for the
 * sweep is the rank-one part: GJ / EI times `twistGradient` times itself.
 */
export function placeTwist(ws: RodWorkspace, load: TwistLoad): void {
  const { twistGradient, edges } = ws;
  const torque = load.stiffness * ws.state.twistRad;
  twistGradient.fill(0);
  for (let k = 1; k < edges; k++) twistCell(ws, k, torque);
  twistEndCell(ws, 0, torque, load.axisA, -1);
  twistEndCell(ws, edges, torque, load.axisB, 1);
}
