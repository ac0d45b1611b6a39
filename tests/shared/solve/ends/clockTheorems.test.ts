import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { degreesApart, radiansToDegrees } from '../../../../shared/base/units.ts';
import { cross, dot, rejectFrom, scale, sub, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import {
  type CubicCurve,
  curveAt,
  curveFromCoefficients,
  curveLengthMm,
} from '../../../../shared/geometry/cubicCurve.ts';
import { clockBetween } from '../../../../shared/solve/ends/clock.ts';
import { writhe } from '../../../oracles/writhe.ts';

/** A smooth closed curve: a circle of 300 mm with three seeded harmonics in each coordinate, no tighter than a hose. */
function closedCurve(seed: number): (t: number) => Vec3 {
  const random = seededRandom(seed);
  const waves = Array.from({ length: 9 }, (_, i) => ({
    axis: i % 3,
    times: 2 + Math.floor(i / 3),
    cosine: 40 * (random() - 0.5),
    sine: 40 * (random() - 0.5),
  }));
  return (t) => {
    const p = [300 * Math.cos(t), 300 * Math.sin(t), 0];
    for (const { axis, times, cosine, sine } of waves)
      p[axis] = p[axis]! + cosine * Math.cos(times * t) + sine * Math.sin(times * t);
    return p as unknown as Vec3;
  };
}

/** Cubic pieces with the curve's own places and directions at the joints; derivative by central differences. */
function piecewise(curve: (t: number) => Vec3, pieces: number): CubicCurve {
  const coefficients = new Float64Array(12 * pieces);
  const h = (2 * Math.PI) / pieces;
  const slope = (t: number): Vec3 => scale(sub(curve(t + 1e-5), curve(t - 1e-5)), h / 2e-5);
  for (let i = 0; i < pieces; i++) {
    const [p0, p1] = [curve(i * h), curve((i + 1) * h)];
    const [m0, m1] = [slope(i * h), slope((i + 1) * h)];
    for (const k of [0, 1, 2] as const) {
      coefficients[12 * i + k] = p0[k];
      coefficients[12 * i + 3 + k] = m0[k];
      coefficients[12 * i + 6 + k] = 3 * (p1[k] - p0[k]) - 2 * m0[k] - m1[k];
      coefficients[12 * i + 9 + k] = 2 * (p0[k] - p1[k]) + m0[k] + m1[k];
    }
  }
  return curveFromCoefficients(coefficients);
}

/** deg, right-handed about the curve: how far a direction carried once round without twist comes back turned. */
function turnOnceRound(curve: CubicCurve): number {
  const { tangent } = curveAt(curve, 0);
  const start = unit(rejectFrom([0.3, 0.2, 1], tangent));
  // The clock runs counter-clockwise to the eye from the carried direction to the start: right-handed from start to carried.
  return clockBetween(curve, start, start);
}

describe('a direction carried round a closed curve', () => {
  it('comes back turned by the writhe: Lk = Tw + Wr with Lk whole (Calugareanu, White, Fuller)', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const curve = closedCurve(seed);
      const points = Array.from({ length: 400 }, (_, i) => curve((2 * Math.PI * i) / 400));
      // The carried frame has no twist. Closing it needs the twist that turns it back, Tw; with it Tw + Wr is whole.
      const turned = turnOnceRound(piecewise(curve, 360));
      const whole = turned / 360 - writhe(points);
      expect(Math.abs(whole - Math.round(whole))).toBeLessThan(1e-3);
    }
  });

  it('comes back turned by the solid angle of its tangents (Gauss and Bonnet; Fuller 1978)', () => {
    for (let seed = 21; seed <= 32; seed++) {
      const curve = piecewise(closedCurve(seed), 360);
      const total = curveLengthMm(curve);
      const tangents = Array.from({ length: 720 }, (_, i) => curveAt(curve, (total * i) / 720).tangent);
      const area = radiansToDegrees(sphericalArea(tangents));
      expect(degreesApart(turnOnceRound(curve), area)).toBeLessThan(0.05);
    }
  });
});

/** Signed area of a polygon on the unit sphere, seen from outside counter-clockwise, by triangles to the pole (van Oosterom and Strackee). */
function sphericalArea(corners: readonly Vec3[]): number {
  const pole = unit([0.6, -0.5, 0.62]);
  return corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    return sum + 2 * Math.atan2(dot(pole, cross(a, b)), 1 + dot(a, b) + dot(b, pole) + dot(pole, a));
  }, 0);
}

describe('against a fine integration', () => {
  it('of the equation of the twist-free frame, by the rule of Runge and Kutta, on random cubic curves', () => {
    for (let seed = 41; seed <= 60; seed++) {
      const curve = piecewise(closedCurve(seed), 24);
      const start = unit(rejectFrom([1, 1, 0.2], curveAt(curve, 0).tangent));
      const end = unit(rejectFrom([0.1, 1, -0.4], curveAt(curve, curveLengthMm(curve)).tangent));
      const arrived = integrated(curve, start);
      const tangent = curveAt(curve, curveLengthMm(curve)).tangent;
      const right = radiansToDegrees(Math.atan2(dot(tangent, cross(arrived, end)), dot(arrived, end)));
      expect(degreesApart(clockBetween(curve, start, end), -right)).toBeLessThan(1e-4);
    }
  });
});

/** U' = -(U . T') T along each piece, fourth order, 400 steps a piece; T' from the cubic's own derivatives. */
function integrated(curve: CubicCurve, start: Vec3): Vec3 {
  let u = [...start];
  const c = curve.coefficients;
  const steps = 400;
  for (let piece = 0; piece < c.length / 12; piece++) {
    const rate = (v: readonly number[], t: number): number[] => {
      const first = [0, 1, 2].map(
        (k) => c[12 * piece + 3 + k]! + t * (2 * c[12 * piece + 6 + k]! + 3 * t * c[12 * piece + 9 + k]!),
      );
      const second = [0, 1, 2].map((k) => 2 * c[12 * piece + 6 + k]! + 6 * t * c[12 * piece + 9 + k]!);
      const speed2 = first.reduce((sum, x) => sum + x * x, 0);
      const along = v.reduce((sum, x, k) => sum + x * second[k]!, 0) / speed2;
      return first.map((x) => -along * x);
    };
    const h = 1 / steps;
    for (let i = 0; i < steps; i++) {
      const at = i * h;
      const k1 = rate(u, at);
      const k2 = rate(
        u.map((x, k) => x + (h / 2) * k1[k]!),
        at + h / 2,
      );
      const k3 = rate(
        u.map((x, k) => x + (h / 2) * k2[k]!),
        at + h / 2,
      );
      const k4 = rate(
        u.map((x, k) => x + h * k3[k]!),
        at + h,
      );
      u = u.map((x, k) => x + (h / 6) * (k1[k]! + 2 * k2[k]! + 2 * k3[k]! + k4[k]!));
    }
  }
  return u as unknown as Vec3;
}
