import { describe, expect, it } from 'vitest';
import { degreesApart, degreesToRadians } from '../../../../shared/base/units.ts';
import { turnAbout, type Vec3 } from '../../../../shared/base/vec3.ts';
import {
  type CubicCurve,
  joinCurves,
  reversedCurve,
  splineThrough,
  straightCurve,
} from '../../../../shared/geometry/cubicCurve.ts';
import { clockBetween } from '../../../../shared/solve/ends/clock.ts';

/** A quarter bend of radius R from `at`, leaving along `from` and arriving along `to`. */
function bend(at: Vec3, from: Vec3, to: Vec3, radius: number): CubicCurve {
  const pieces = 24;
  const nodes = new Float64Array(3 * (pieces + 1));
  for (let i = 0; i <= pieces; i++) {
    const a = (Math.PI / 2) * (i / pieces);
    for (let k = 0; k < 3; k++)
      nodes[3 * i + k] = at[k]! + radius * (Math.sin(a) * from[k]! + (1 - Math.cos(a)) * to[k]!);
  }
  return splineThrough(nodes, (radius * Math.PI) / 2 / pieces, from, to);
}

/** Straight 50 along +x, bend R100 to +y, straight 100, bend R100 to +z, straight 50. */
const CURVE = joinCurves([
  straightCurve([0, 0, 0], [50, 0, 0]),
  bend([50, 0, 0], [1, 0, 0], [0, 1, 0], 100),
  straightCurve([150, 100, 0], [150, 200, 0]),
  bend([150, 200, 0], [0, 1, 0], [0, 0, 1], 100),
  straightCurve([150, 300, 100], [150, 300, 150]),
]);

describe('clockBetween', () => {
  // Closed form (two square bends in square planes): outlet A +z, outlet B turned by b from +x toward +y.
  it.each([
    [0, 270],
    [30, 240],
    [60, 210],
    [150, 120],
  ])('outlet B at %d degrees gives %d', (turned, expected) => {
    const upB = turnAbout([1, 0, 0], [0, 0, 1], degreesToRadians(turned));
    expect(degreesApart(clockBetween(CURVE, [0, 0, 1], upB), expected)).toBeLessThan(1e-6);
  });

  it('is the same number from either end', () => {
    const upB = turnAbout([1, 0, 0], [0, 0, 1], 0.7);
    const there = clockBetween(CURVE, [0, 0, 1], upB);
    const back = clockBetween(reversedCurve(CURVE), upB, [0, 0, 1]);
    expect(degreesApart(there, back)).toBeLessThan(1e-6);
  });

  it("reads near down, far at 3 o'clock as 90 and far at 9 as 270 (sign test, MIL-DTL-83796/5 Fig. 3)", () => {
    // Looking along +x with +z up: 3 o'clock is to the right, which is -y.
    const straight = straightCurve([0, 0, 0], [300, 0, 0]);
    expect(clockBetween(straight, [0, 0, -1], [0, -1, 0])).toBeCloseTo(90, 9);
    expect(clockBetween(straight, [0, 0, -1], [0, 1, 0])).toBeCloseTo(270, 9);
  });

  it('mirrors to 360 - a', () => {
    const mirror = (v: Vec3): Vec3 => [-v[0], v[1], v[2]];
    const mirrored = joinCurves([
      straightCurve([0, 0, 0], [-50, 0, 0]),
      bend([-50, 0, 0], [-1, 0, 0], [0, 1, 0], 100),
      straightCurve([-150, 100, 0], [-150, 200, 0]),
      bend([-150, 200, 0], [0, 1, 0], [0, 0, 1], 100),
      straightCurve([-150, 300, 100], [-150, 300, 150]),
    ]);
    const upB = turnAbout([1, 0, 0], [0, 0, 1], 0.4);
    const a = clockBetween(CURVE, [0, 0, 1], upB);
    const b = clockBetween(mirrored, [0, 0, 1], mirror(upB));
    expect(degreesApart(a, 360 - b)).toBeLessThan(1e-6);
  });
});
