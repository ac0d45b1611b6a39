import { type RandomSource, seededRandom } from '../../shared/base/random.ts';
import { anySquareTo, cross, distance, dot, sub, type Vec3 } from '../../shared/base/vec3.ts';
import type { Pose } from '../../shared/geometry/arcLinePath.ts';
import { findRoot, type RootSetting } from './leastSquares.ts';

/**
 * Shortest curve with curvature at most 1 between two poses, by Pontryagin's maximum principle: every minimiser is an extremal
 * (Sussmann 1995), and the extremals through both poses are looked for by shooting from many random starts. Two kinds:
 * arc-straight-arc in closed form, and the curves of curvature 1 all along (helicoidal arcs; arcs alone are their limits).
 * In twist-free square directions M1, M2 along the curve, with p the constant costate of the point and q (two numbers) that of the direction:
 *   T' = k1 M1 + k2 M2,  k = q / |q|,  p.T + |q| = e >= 0,  q' = -P,  P' = -k (p.T),  P = (p.M1, p.M2).
 * Slow (seconds a pair), and sharing no code with the connector but vectors. Not a proof: a minimum that no start
 * falls into is missed.
 */
export interface Extremal {
  readonly length: number;
  readonly kind: 'arc-straight-arc' | 'curved all along';
}

export function shortestExtremal(from: Pose, to: Pose, shots: number, seed: number): Extremal | undefined {
  const random = seededRandom(seed);
  const goal = seenFromStart(from, to);
  const apart = distance(from.point, to.point);
  let best: Extremal | undefined;
  for (let shot = 0; shot < shots; shot++) {
    const csc = arcStraightArc(goal, random, apart);
    if (csc !== undefined && !(best && best.length <= csc)) best = { length: csc, kind: 'arc-straight-arc' };
    const curved = curvedAllAlong(goal, random, apart);
    if (curved !== undefined && !(best && best.length <= curved)) best = { length: curved, kind: 'curved all along' };
  }
  return best;
}

export interface Goal {
  readonly point: Vec3;
  readonly direction: Vec3;
  readonly square: readonly [Vec3, Vec3];
}

/** The goal in the frame of the start: its point at the origin, its direction along +x. */
export function seenFromStart(from: Pose, to: Pose): Goal {
  const [t, m] = [from.direction, anySquareTo(from.direction)];
  const n = cross(t, m);
  const seen = (v: Vec3): Vec3 => [dot(v, t), dot(v, m), dot(v, n)];
  const direction = seen(to.direction);
  const square = anySquareTo(direction);
  return { point: seen(sub(to.point, from.point)), direction, square: [square, cross(direction, square)] };
}

const CSC: RootSetting = { unknowns: 5, equations: 5, mostSteps: 40, mostChange: 0.7, closeEnough: 1e-11 };

/** Unknowns: side and turn of the first arc, straight, side and turn of the last arc, which is gone along backwards from the goal. */
function arcStraightArc(goal: Goal, random: RandomSource, apart: number): number | undefined {
  const { point, direction, square } = goal;
  const back: Vec3 = [-direction[0], -direction[1], -direction[2]];
  const start = new Float64Array([turn(random), turn(random), random() * (apart + 1), turn(random), turn(random)]);
  const root = findRoot(
    (x, out) => {
      const [side, angle, straight, lastSide, lastAngle] = x as unknown as [number, number, number, number, number];
      const first = arc([1, 0, 0], [0, 1, 0], [0, 0, 1], side, angle);
      const last = arc(back, square[0], square[1], lastSide, lastAngle);
      for (let k = 0; k < 3; k++) {
        const reached = (first.point[k] as number) + straight * (first.direction[k] as number);
        out[k] = reached - (last.point[k] as number) - (point[k] as number);
      }
      // The straight's direction at either end, compared square to the first: blind to opposite ones, told apart below.
      const [u, v] = [anySquareTo(first.direction), cross(first.direction, anySquareTo(first.direction))];
      out[3] = dot(last.direction, u);
      out[4] = dot(last.direction, v);
      return true;
    },
    start,
    CSC,
  );
  if (!root) return undefined;
  const [side, angle, straight, lastSide, lastAngle] = [...root] as [number, number, number, number, number];
  const first = arc([1, 0, 0], [0, 1, 0], [0, 0, 1], side, angle);
  const last = arc(back, square[0], square[1], lastSide, lastAngle);
  // Back along a circle is as good as on along the rest of it.
  const isForward = dot(first.direction, last.direction) < 0 && straight >= 0;
  return isForward ? wrappedTurn(angle) + straight + wrappedTurn(lastAngle) : undefined;
}

function wrappedTurn(angle: number): number {
  return angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
}

function arc(t: Vec3, m: Vec3, n: Vec3, side: number, angle: number): Pose {
  const [c, s] = [Math.cos(side), Math.sin(side)];
  const mixed = (k: number, along: number, aside: number): number =>
    along * (t[k] as number) + aside * (c * (m[k] as number) + s * (n[k] as number));
  const at = (along: number, aside: number): Vec3 => [
    mixed(0, along, aside),
    mixed(1, along, aside),
    mixed(2, along, aside),
  ];
  return { point: at(Math.sin(angle), 1 - Math.cos(angle)), direction: at(Math.cos(angle), Math.sin(angle)) };
}

const CURVED: RootSetting = { unknowns: 6, equations: 5, mostSteps: 45, mostChange: 1, closeEnough: 1e-9 };

/** Unknowns: q (2), P (2) and e at the start, up to a common factor, and the length. */
function curvedAllAlong(goal: Goal, random: RandomSource, apart: number): number | undefined {
  const { point, direction, square } = goal;
  const start = new Float64Array([
    normal(random),
    normal(random),
    normal(random),
    normal(random),
    Math.abs(normal(random)),
    apart + 0.2 + 7 * random(),
  ]);
  const most = apart + 10;
  const end = new Float64Array(STATE);
  const root = findRoot(
    (x, out, isDifference) => {
      if (!((x[5] as number) > 0.02 && (x[5] as number) < most)) return false;
      if (!integrate(x, end, isDifference)) return false;
      const t: Vec3 = [end[3] as number, end[4] as number, end[5] as number];
      for (let k = 0; k < 3; k++) out[k] = (end[k] as number) - (point[k] as number);
      const stretch = 2 / (1 + Math.max(-0.999, dot(t, direction)));
      out[3] = stretch * dot(t, square[0]);
      out[4] = stretch * dot(t, square[1]);
      return true;
    },
    start,
    CURVED,
  );
  return root && (root[4] as number) >= 0 ? (root[5] as number) : undefined;
}

/** x (3), T (3), M1 (3), M2 (3), q (2), P (2) */
const STATE = 16;
const MOST_STEPS = 800;
const TOLERANCE = 1e-9;

/** Dormand and Prince 1980, 5(4). */
const STAGES: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const ERRORS = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

const slopes: Float64Array[] = Array.from({ length: 7 }, () => new Float64Array(STATE));
const stage = new Float64Array(STATE);
/** Shares of the length of the last run's steps: a difference is taken over the same steps, so that their error cancels. */
let plan: number[] = [];

function integrate(x: Float64Array, y: Float64Array, isReplayed: boolean): boolean {
  const total = x[5] as number;
  const e = x[4] as number;
  y.fill(0);
  y[3] = 1;
  y[7] = 1;
  y[11] = 1;
  y.set(x.subarray(0, 4), 12);
  slopeAt(y, e, slopes[0] as Float64Array);
  if (isReplayed) {
    for (const share of plan) {
      tryStep(y, e, share * total);
      take(y);
    }
    return true;
  }
  plan = [];
  let h = 0.1;
  for (let done = 0; done < total; ) {
    if (plan.length > MOST_STEPS) return false;
    h = Math.min(h, total - done);
    const error = tryStep(y, e, h);
    if (error <= TOLERANCE || h < 1e-10) {
      done = total - done - h < 1e-14 ? total : done + h;
      plan.push(h / total);
      take(y);
    }
    h *= Math.min(4, Math.max(0.2, 0.9 * (TOLERANCE / (error + 1e-300)) ** 0.2));
    if (!(h > 0)) return false;
  }
  return true;
}

function take(y: Float64Array): void {
  y.set(stage);
  [slopes[0], slopes[6]] = [slopes[6] as Float64Array, slopes[0] as Float64Array];
}

function tryStep(y: Float64Array, e: number, h: number): number {
  for (let s = 1; s < 7; s++) {
    const row = STAGES[s] as number[];
    for (let i = 0; i < STATE; i++) {
      let v = y[i] as number;
      for (let j = 0; j < s; j++) v += h * (row[j] as number) * ((slopes[j] as Float64Array)[i] as number);
      stage[i] = v;
    }
    slopeAt(stage, e, slopes[s] as Float64Array);
  }
  let worst = 0;
  for (let i = 0; i < STATE; i++) {
    let error = 0;
    for (let j = 0; j < 7; j++) error += (ERRORS[j] as number) * ((slopes[j] as Float64Array)[i] as number);
    worst = Math.max(worst, Math.abs(h * error));
  }
  return worst;
}

function slopeAt(y: Float64Array, e: number, out: Float64Array): void {
  const q1 = y[12] as number;
  const q2 = y[13] as number;
  const size = Math.sqrt(q1 * q1 + q2 * q2) + 1e-300;
  const k1 = q1 / size;
  const k2 = q2 / size;
  const alongT = e - size;
  for (let i = 0; i < 3; i++) {
    const t = y[3 + i] as number;
    out[i] = t;
    out[3 + i] = k1 * (y[6 + i] as number) + k2 * (y[9 + i] as number);
    out[6 + i] = -k1 * t;
    out[9 + i] = -k2 * t;
  }
  out[12] = -(y[14] as number);
  out[13] = -(y[15] as number);
  out[14] = -k1 * alongT;
  out[15] = -k2 * alongT;
}

function turn(random: RandomSource): number {
  return 2 * Math.PI * random();
}

function normal(random: RandomSource): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(turn(random));
}
