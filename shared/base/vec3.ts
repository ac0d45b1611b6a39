/** A point or a direction: x, y, z. Bay frame unless a name says otherwise (right-handed, +Z up), mm for points. */
export type Vec3 = readonly [number, number, number];

export const ZERO: Vec3 = [0, 0, 0];
export const UP: Vec3 = [0, 0, 1];
/** The way things fall in the levelled bay. */
export const DOWN: Vec3 = [0, 0, -1];

export function add(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function sub(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Vec3, factor: number): Vec3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

/** a + b * factor */
export function addScaled(a: Vec3, b: Vec3, factor: number): Vec3 {
  return [a[0] + b[0] * factor, a[1] + b[1] * factor, a[2] + b[2] * factor];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Length by its parts. A square root is rounded alike on every host; how `Math.hypot` is rounded is left to the host. */
export function lengthOf(x: number, y: number, z = 0): number {
  return Math.sqrt(x * x + y * y + z * z);
}

export function length(a: Vec3): number {
  return lengthOf(a[0], a[1], a[2]);
}

export function distance(a: Vec3, b: Vec3): number {
  return lengthOf(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** Unit vector along a. The zero vector has no direction: the answer is NaN there, so callers keep it out. */
export function unit(a: Vec3): Vec3 {
  return scale(a, 1 / length(a));
}

export function lerp(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

/** The part of a square to the unit vector n. */
export function rejectFrom(a: Vec3, n: Vec3): Vec3 {
  return addScaled(a, n, -dot(a, n));
}

/** Some unit vector square to the unit vector n, the same one for the same n. */
export function anySquareTo(n: Vec3): Vec3 {
  const helper: Vec3 = Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  return unit(rejectFrom(helper, n));
}

/** a turned about the unit axis by angleRad, right-handed (Rodrigues). */
export function turnAbout(a: Vec3, axis: Vec3, angleRad: number): Vec3 {
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  return addScaled(addScaled(scale(a, c), cross(axis, a), s), axis, dot(axis, a) * (1 - c));
}

/** Angle between two unit vectors, 0 to pi rad, accurate near 0 and near pi. */
export function angleBetween(a: Vec3, b: Vec3): number {
  return Math.atan2(length(cross(a, b)), dot(a, b));
}

/** Right-handed angle about the unit axis that turns a (square to the axis) onto b, in (-pi, pi] rad. */
export function signedAngleAbout(axis: Vec3, a: Vec3, b: Vec3): number {
  return Math.atan2(dot(axis, cross(a, b)), dot(a, b));
}

/** A copy that may be written to, as plain records want it. */
export function triple(v: Vec3): [number, number, number] {
  return [v[0], v[1], v[2]];
}
