import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { distance, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { type CubicCurve, curveAt, curveLengthMm, splineThrough } from '../../../shared/geometry/cubicCurve.ts';
import { leastAlong, leastRadius } from '../../../shared/geometry/curveLimits.ts';

function wildCurve(seed: number): CubicCurve {
  const random = seededRandom(seed);
  const pieces = 12;
  const nodes = new Float64Array(3 * (pieces + 1));
  let heading: Vec3 = [1, 0, 0];
  for (let i = 1; i <= pieces; i++) {
    heading = unit([heading[0] + random() - 0.5, heading[1] + random() - 0.5, heading[2] + random() - 0.5]);
    for (let k = 0; k < 3; k++) nodes[3 * i + k] = (nodes[3 * i - 3 + k] as number) + 20 * (heading[k] as number);
  }
  return splineThrough(nodes, 20, [1, 0, 0], heading);
}

function densest(curve: CubicCurve, value: (s: number) => number): number {
  const total = curveLengthMm(curve);
  let least = Infinity;
  for (let i = 0; i <= 40_000; i++) least = Math.min(least, value((total * i) / 40_000));
  return least;
}

describe('curveLimits', () => {
  it('proves the least radius: dense sampling never finds less than the bound, nor less than found by more than the gap', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const curve = wildCurve(seed);
      const sampled = densest(curve, (s) => 1 / curveAt(curve, s).curvature);
      const least = leastRadius(curve, 0.001);
      expect(least.provenAtLeast).toBeLessThanOrEqual(sampled * (1 + 1e-9));
      expect(least.found).toBeGreaterThanOrEqual(least.provenAtLeast);
      expect(least.found / least.provenAtLeast).toBeLessThan(1.0011);
      expect(curveAt(curve, least.arcLengthMm).curvature).toBeCloseTo(1 / least.found, 4);
    }
  });

  it('proves the least distance to points within the gap', () => {
    for (let seed = 20; seed <= 32; seed++) {
      const random = seededRandom(seed);
      const curve = wildCurve(seed);
      const points = Array.from({ length: 30 }, (): Vec3 => [random() * 250, random() * 100 - 50, random() * 100 - 50]);
      const value = (p: Vec3): number => Math.min(...points.map((q) => distance(p, q)));
      const sampled = densest(curve, (s) => value(curveAt(curve, s).point));
      const least = leastAlong(
        curve,
        0,
        curveLengthMm(curve),
        {
          valueAt: (p, upTo) => {
            const v = value(p);
            return v < upTo ? v : Infinity; // a bounded query, as the mesh index answers it
          },
        },
        1,
        0.1,
      );
      expect(least.provenAtLeast).toBeLessThanOrEqual(sampled + 1e-9);
      expect(least.found - least.provenAtLeast).toBeLessThanOrEqual(0.1 + 1e-12);
      expect(value(least.point)).toBeCloseTo(least.found, 9);
    }
  });

  it('looks only for what is below a value: the same where there is such, nothing and its proof where there is none', () => {
    for (let seed = 20; seed <= 32; seed++) {
      const random = seededRandom(seed);
      const curve = wildCurve(seed);
      const points = Array.from({ length: 30 }, (): Vec3 => [random() * 250, random() * 100 - 50, random() * 100 - 50]);
      const value = (p: Vec3): number => Math.min(...points.map((q) => distance(p, q)));
      const least = densest(curve, (s) => value(curveAt(curve, s).point));
      const below = (mm: number) => leastAlong(curve, 0, curveLengthMm(curve), { valueAt: value }, 1, 0.1, mm);
      const there = below(least + 5);
      expect(there.found).toBeLessThan(least + 0.1 + 1e-9);
      expect(there.provenAtLeast).toBeLessThanOrEqual(least + 1e-9);
      expect(there.found - there.provenAtLeast).toBeLessThanOrEqual(0.1 + 1e-12);
      const none = below(least - 0.5);
      expect(none.found).toBe(Infinity);
      expect(none.provenAtLeast).toBeGreaterThanOrEqual(least - 0.6 - 1e-9);
      expect(none.provenAtLeast).toBeLessThanOrEqual(least + 1e-9);
    }
  });

  it('answers infinity where nothing is near', () => {
    const curve = wildCurve(3);
    const least = leastAlong(curve, 0, curveLengthMm(curve), { valueAt: () => Infinity }, 1, 0.1);
    expect(least.found).toBe(Infinity);
  });
});
