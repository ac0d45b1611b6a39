import { add, sub, turnAbout, type Vec3 } from '../base/vec3.ts';

/** A rigid movement of the bay's space: a place p goes to R p + shift. */
export interface RigidMotion {
  /** the columns of R: where the unit vectors of X, Y and Z go */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** mm */
  readonly shift: Vec3;
}

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];

export const AT_REST: RigidMotion = { axes: [X, Y, Z], shift: [0, 0, 0] };

/**
 * Turns about the axes of the bay through a pivot, first by rollRad about X, then by pitchRad about Y, then by yawRad
 * about Z (the axes do not turn along), each right-handed; then shifts. pivot, shift: mm.
 */
export function rigidMotion(
  pivot: Vec3,
  rollRad: number,
  pitchRad: number,
  yawRad: number,
  shiftMm: Vec3,
): RigidMotion {
  const turn = (v: Vec3): Vec3 => turnAbout(turnAbout(turnAbout(v, X, rollRad), Y, pitchRad), Z, yawRad);
  const axes: RigidMotion['axes'] = [turn(X), turn(Y), turn(Z)];
  const turnedPivot = turnDirection({ axes, shift: [0, 0, 0] }, pivot);
  return { axes, shift: add(sub(pivot, turnedPivot), shiftMm) };
}

/** A direction (or any difference of places), turned. */
export function turnDirection({ axes: [x, y, z] }: RigidMotion, v: Vec3): Vec3 {
  return [
    x[0] * v[0] + y[0] * v[1] + z[0] * v[2],
    x[1] * v[0] + y[1] * v[1] + z[1] * v[2],
    x[2] * v[0] + y[2] * v[1] + z[2] * v[2],
  ];
}

/** A place, mm, moved. */
export function movePoint(motion: RigidMotion, p: Vec3): Vec3 {
  return add(turnDirection(motion, p), motion.shift);
}

/** The movement back. */
export function inverseMotion({ axes: [x, y, z], shift }: RigidMotion): RigidMotion {
  const back: RigidMotion = {
    axes: [
      [x[0], y[0], z[0]],
      [x[1], y[1], z[1]],
      [x[2], y[2], z[2]],
    ],
    shift: [0, 0, 0],
  };
  const [a, b, c] = turnDirection(back, shift);
  return { ...back, shift: [-a, -b, -c] };
}

/** x, y, z of places one after the other, mm, all moved. */
export function moveAll(motion: RigidMotion, points: Float64Array): Float64Array {
  const out = new Float64Array(points.length);
  for (let i = 0; i + 2 < points.length; i += 3)
    out.set(movePoint(motion, [points[i] as number, points[i + 1] as number, points[i + 2] as number]), i);
  return out;
}
