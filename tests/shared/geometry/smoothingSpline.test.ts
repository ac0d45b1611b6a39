import { expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { turnAbout, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { curveAt, curveLengthMm } from '../../../shared/geometry/cubicCurve.ts';
import { smoothingSpline } from '../../../shared/geometry/smoothingSpline.ts';
import { scattered, TWO_ELBOW_LENGTH_MM, twoElbowPoints } from '../../oracles/twoElbowRod.ts';

/** A helix of radius 80 mm and rise 40 mm a turn, one turn and a half, one point every so many degrees. */
function helix(stepDeg: number): Vec3[] {
  return Array.from({ length: Math.round(540 / stepDeg) + 1 }, (_, i): Vec3 => {
    const a = (i * stepDeg * Math.PI) / 180;
    return [80 * Math.cos(a), 80 * Math.sin(a), (40 * a) / (2 * Math.PI)];
  });
}

it('goes through points that do not scatter: a helix of known length', () => {
  const { curve, scatterMm } = smoothingSpline(helix(9));
  // Closed form: turns times the root of circumference squared and rise squared. Its ends are natural, so not as close.
  expect(curveLengthMm(curve)).toBeCloseTo(1.5 * Math.hypot(2 * Math.PI * 80, 40), 1);
  expect(scatterMm).toBeLessThan(0.01);
});

it('keeps a straight line straight, however it is smoothed', () => {
  const points = Array.from({ length: 30 }, (_, i): Vec3 => [3 * i, 4 * i, 0]);
  const { curve } = smoothingSpline(points);
  expect(curveLengthMm(curve)).toBeCloseTo(145, 9);
  for (let s = 0; s <= 145; s += 7.3) expect(curveAt(curve, s).curvature).toBeLessThan(1e-9);
});

it('tells the scatter of a straight rod, and takes most of it out', () => {
  const line = Array.from({ length: 200 }, (_, i): Vec3 => [5 * i, 0, 0]);
  const { curve, scatterMm } = smoothingSpline(scattered(line, 0.8, seededRandom(3)));
  // 200 points, two coordinates across: the estimate's own standard error is 0.8 / sqrt(800) = 0.03.
  expect(Math.abs(scatterMm - 0.8)).toBeLessThan(0.1);
  for (let s = 50; s < 950; s += 50) {
    const { point } = curveAt(curve, s);
    expect(Math.hypot(point[1], point[2])).toBeLessThan(0.8);
  }
});

it('is moved and turned with its points, and reversed with them', () => {
  const points = scattered(twoElbowPoints(52), 0.5, seededRandom(9));
  const axis = unit([1, -2, 0.5]);
  const moved = points.map((p): Vec3 => {
    const turned = turnAbout(p, axis, 1.1);
    return [turned[0] + 1000, turned[1] - 300, turned[2] + 77];
  });
  const first = curveLengthMm(smoothingSpline(points).curve);
  expect(curveLengthMm(smoothingSpline(moved).curve)).toBeCloseTo(first, 6);
  expect(curveLengthMm(smoothingSpline([...points].reverse()).curve)).toBeCloseTo(first, 6);
});

it('does not follow points that scatter as much as they stand apart', () => {
  for (let seed = 1; seed <= 10; seed++) {
    const { curve } = smoothingSpline(scattered(twoElbowPoints(104), 2, seededRandom(seed)));
    // Joined point to point these are some 40 % longer than the rod; the ends alone scatter by 2 mm each.
    expect(Math.abs(curveLengthMm(curve) - TWO_ELBOW_LENGTH_MM)).toBeLessThan(10);
  }
});
