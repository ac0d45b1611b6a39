import { addScaled, dot, length, rejectFrom, sub, unit, type Vec3 } from '../base/vec3.ts';
import { type CubicCurve, curveAt, curveLengthMm } from './cubicCurve.ts';

/**
 * Carries a direction along a curve without twist (rotation-minimising frame).
 * points, tangents: samples along the curve in order, unit tangents; start: a direction at the first sample, made square
 * to its tangent. Answers the carried unit direction at each sample.
 * Method: double reflection (Wang, Juettler, Zheng, Liu, "Computation of rotation minimizing frames", ACM TOG 27(1),
 * 2008): fourth order in the sample spacing, exact on planar and spherical curves.
 */
export function carryWithoutTwist(points: readonly Vec3[], tangents: readonly Vec3[], start: Vec3): Vec3[] {
  const first = unit(rejectFrom(start, tangents[0] as Vec3));
  const carried: Vec3[] = [first];
  let r = first;
  for (let i = 0; i + 1 < points.length; i++) {
    r = reflectTwice(points[i] as Vec3, tangents[i] as Vec3, points[i + 1] as Vec3, tangents[i + 1] as Vec3, r);
    carried.push(r);
  }
  return carried;
}

function reflectTwice(p0: Vec3, t0: Vec3, p1: Vec3, t1: Vec3, r0: Vec3): Vec3 {
  const chord = sub(p1, p0);
  const c1 = dot(chord, chord);
  const reflected = c1 > 0 ? addScaled(r0, chord, (-2 / c1) * dot(chord, r0)) : r0;
  const tangent = c1 > 0 ? addScaled(t0, chord, (-2 / c1) * dot(chord, t0)) : t0;
  const second = sub(t1, tangent);
  const c2 = dot(second, second);
  const turned = c2 > 0 ? addScaled(reflected, second, (-2 / c2) * dot(second, reflected)) : reflected;
  const square = rejectFrom(turned, t1);
  return addScaled([0, 0, 0], square, 1 / length(square));
}

/** The direction `start` (at the curve's start, made square to it) carried without twist to the curve's end; sampled at most stepMm apart. */
export function carryAlongCurve(curve: CubicCurve, start: Vec3, stepMm: number): Vec3 {
  const total = curveLengthMm(curve);
  const steps = Math.max(2, Math.ceil(total / stepMm));
  const places = Array.from({ length: steps + 1 }, (_, i) => curveAt(curve, (total * i) / steps));
  const carried = carryWithoutTwist(
    places.map((p) => p.point),
    places.map((p) => p.tangent),
    start,
  );
  return carried[carried.length - 1] as Vec3;
}
