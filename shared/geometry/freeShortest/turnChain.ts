import type { Vec3 } from '../../base/vec3.ts';

/**
 * A curve made of arcs, in units of the least radius: it starts at the origin along +x, and arc i bends by the curvature
 * (`bends[2i]`, `bends[2i + 1]`) towards two square directions that are carried along without twist (first +y and +z).
 * The size of a curvature is at most 1.
 */
export interface TurnChain {
  readonly bends: Float64Array;
  /** share of the whole length that each arc has; their sum is 1 */
  readonly shares: Float64Array;
  readonly length: number;
}

/** Where a chain is to end, seen from its start: the point in least radii, the direction unit. */
export interface ChainGoal {
  readonly point: Vec3;
  readonly direction: Vec3;
}

/** Numbers kept for a joint: the point, the direction along, and the two square ones. */
export const JOINT = 12;
/** Numbers kept for an arc's effect on the end: five for each of its two curvatures (see `endColumns`). */
export const COLUMN = 10;

/** rad^2; under this turn, squared, the closed forms lose digits, and the series are exact to double accuracy */
const SERIES_BELOW = 4e-4;

/** Joints of a chain, its start first, `JOINT` numbers each. Closed form. */
export function layChain({ bends, shares, length }: TurnChain, joints: Float64Array): void {
  joints.fill(0, 0, JOINT);
  joints[3] = 1;
  joints[7] = 1;
  joints[11] = 1;
  for (let i = 0; i < shares.length; i++) {
    const h = (shares[i] as number) * length;
    const p = (bends[2 * i] as number) * h;
    const q = (bends[2 * i + 1] as number) * h;
    const squared = p * p + q * q;
    const s = sineForm(squared);
    const b = cosineForm(squared);
    for (let o = JOINT * i; o < JOINT * i + 3; o++) {
      const t = joints[o + 3] as number;
      const m = joints[o + 6] as number;
      const n = joints[o + 9] as number;
      const lean = p * m + q * n;
      joints[o + JOINT] = (joints[o] as number) + h * (s * t + b * lean);
      joints[o + JOINT + 3] = t * (1 - b * squared) + s * lean;
      joints[o + JOINT + 6] = m - p * (s * t + b * lean);
      joints[o + JOINT + 9] = n - q * (s * t + b * lean);
    }
  }
}

/**
 * How far the end of a chain is from its goal, as five numbers: the way still to go (3), and the turn still to make, rad,
 * towards the end's two square directions. Answers their size.
 */
export function endMiss(joints: Float64Array, { point, direction }: ChainGoal, miss: Float64Array): number {
  const o = joints.length - JOINT;
  const along = (k: number): number =>
    direction[0] * (joints[o + k] as number) +
    direction[1] * (joints[o + k + 1] as number) +
    direction[2] * (joints[o + k + 2] as number);
  const x = point[0] - (joints[o] as number);
  const y = point[1] - (joints[o + 1] as number);
  const z = point[2] - (joints[o + 2] as number);
  const u = along(6);
  const v = along(9);
  const sine = Math.sqrt(u * u + v * v);
  const turn = Math.atan2(sine, along(3));
  const stretch = sine > 0 ? turn / sine : 1;
  miss[0] = x;
  miss[1] = y;
  miss[2] = z;
  miss[3] = u * stretch;
  miss[4] = v * stretch;
  return Math.sqrt(x * x + y * y + z * z + turn * turn);
}

/**
 * Derivatives of the end (as the five numbers of `endMiss`) by every curvature, `COLUMN` numbers an arc, and by the length, five
 * numbers. Closed form: an arc that changes shifts and turns all that comes after it as one rigid body.
 */
export function endColumns(
  chain: TurnChain,
  joints: Float64Array,
  columns: Float64Array,
  byLength: Float64Array,
): void {
  const { bends, shares, length } = chain;
  columns.fill(0);
  byLength.fill(0);
  for (let i = 0; i < shares.length; i++) {
    const o = JOINT * i;
    const share = shares[i] as number;
    const h = share * length;
    const a = bends[2 * i] as number;
    const b = bends[2 * i + 1] as number;
    const p = a * h;
    const q = b * h;
    const squared = p * p + q * q;
    const s = sineForm(squared);
    const c = cosineForm(squared);
    const r = remainderForm(squared);
    const ds = sineSlope(squared, s);
    const dc = cosineSlope(squared, s, c);
    setMotion(h * ds * p, h * (c + dc * p * p), h * dc * p * q, -c * q, -r * p * q, 1 - r * q * q);
    addAtEnd(joints, o, h, columns, COLUMN * i);
    setMotion(h * ds * q, h * dc * p * q, h * (c + dc * q * q), c * p, r * p * p - 1, r * p * q);
    addAtEnd(joints, o, h, columns, COLUMN * i + 5);
    setMotion(1 - c * squared, s * p, s * q, 0, -b, a);
    addAtEnd(joints, o, share, byLength, 0);
  }
}

/** How an arc's end moves, in the arc's own frame (along, first, second): the shift, then the turn about that end. */
const motion = new Float64Array(6);

function setMotion(x: number, y: number, z: number, turnX: number, turnY: number, turnZ: number): void {
  motion[0] = x;
  motion[1] = y;
  motion[2] = z;
  motion[3] = turnX;
  motion[4] = turnY;
  motion[5] = turnZ;
}

/** Adds to `out` at `at` what the motion of the end of the arc at joint `o`, times a factor, does at the chain's end. */
function addAtEnd(joints: Float64Array, o: number, factor: number, out: Float64Array, at: number): void {
  const end = joints.length - JOINT;
  const inBay = (axis: number, first: number): number =>
    (motion[first] as number) * (joints[o + 3 + axis] as number) +
    (motion[first + 1] as number) * (joints[o + 6 + axis] as number) +
    (motion[first + 2] as number) * (joints[o + 9 + axis] as number);
  const wx = inBay(0, 3);
  const wy = inBay(1, 3);
  const wz = inBay(2, 3);
  const rx = (joints[end] as number) - (joints[o + JOINT] as number);
  const ry = (joints[end + 1] as number) - (joints[o + JOINT + 1] as number);
  const rz = (joints[end + 2] as number) - (joints[o + JOINT + 2] as number);
  const tx = joints[end + 3] as number;
  const ty = joints[end + 4] as number;
  const tz = joints[end + 5] as number;
  const ux = wy * tz - wz * ty;
  const uy = wz * tx - wx * tz;
  const uz = wx * ty - wy * tx;
  const towards = (k: number): number =>
    ux * (joints[end + k] as number) + uy * (joints[end + k + 1] as number) + uz * (joints[end + k + 2] as number);
  out[at] = (out[at] as number) + factor * (inBay(0, 0) + wy * rz - wz * ry);
  out[at + 1] = (out[at + 1] as number) + factor * (inBay(1, 0) + wz * rx - wx * rz);
  out[at + 2] = (out[at + 2] as number) + factor * (inBay(2, 0) + wx * ry - wy * rx);
  out[at + 3] = (out[at + 3] as number) + factor * towards(6);
  out[at + 4] = (out[at + 4] as number) + factor * towards(9);
}

/** sin(turn) / turn, by the turn squared. */
function sineForm(squared: number): number {
  if (squared < SERIES_BELOW) return 1 - (squared / 6) * (1 - (squared / 20) * (1 - squared / 42));
  const turn = Math.sqrt(squared);
  return Math.sin(turn) / turn;
}

/** (1 - cos(turn)) / turn^2, by the turn squared. */
function cosineForm(squared: number): number {
  if (squared < SERIES_BELOW) return 0.5 - (squared / 24) * (1 - (squared / 30) * (1 - squared / 56));
  const half = Math.sin(Math.sqrt(squared) / 2);
  return (2 * half * half) / squared;
}

/** (turn - sin(turn)) / turn^3, by the turn squared. */
function remainderForm(squared: number): number {
  if (squared < SERIES_BELOW) return (1 - (squared / 20) * (1 - (squared / 42) * (1 - squared / 72))) / 6;
  const turn = Math.sqrt(squared);
  return (turn - Math.sin(turn)) / (squared * turn);
}

/** Derivative of `sineForm` by the turn, over the turn. */
function sineSlope(squared: number, s: number): number {
  if (squared < SERIES_BELOW) return -1 / 3 + (squared / 30) * (1 - squared / 28);
  return (Math.cos(Math.sqrt(squared)) - s) / squared;
}

/** Derivative of `cosineForm` by the turn, over the turn. */
function cosineSlope(squared: number, s: number, c: number): number {
  if (squared < SERIES_BELOW) return -1 / 12 + (squared / 180) * (1 - (3 * squared) / 112);
  return (s - 2 * c) / squared;
}
