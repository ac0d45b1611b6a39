import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../shared/base/vec3.ts';
import {
  curveAt,
  curveLengthMm,
  joinCurves,
  reversedCurve,
  splineThrough,
  straightCurve,
} from '../../../shared/geometry/cubicCurve.ts';

/** Nodes, spacing and end tangents of a quarter circle of radius R in the xy plane, starting along +x. */
function quarterCircle(radiusMm: number, pieces: number) {
  const nodes = new Float64Array(3 * (pieces + 1));
  for (let i = 0; i <= pieces; i++) {
    const a = (Math.PI / 2) * (i / pieces);
    nodes.set([radiusMm * Math.sin(a), radiusMm * (1 - Math.cos(a)), 0], 3 * i);
  }
  return { nodes, spacing: (radiusMm * Math.PI) / 2 / pieces, start: [1, 0, 0] as Vec3, end: [0, 1, 0] as Vec3 };
}

describe('cubicCurve', () => {
  it('has the length and curvature of a circle, to the fourth order (closed form)', () => {
    const errors = [8, 16, 32].map((pieces) => {
      const q = quarterCircle(100, pieces);
      const curve = splineThrough(q.nodes, q.spacing, q.start, q.end);
      return Math.abs(curveLengthMm(curve) - 50 * Math.PI);
    });
    expect(errors[1]).toBeLessThan(1e-3);
    expect((errors[0] as number) / (errors[1] as number)).toBeGreaterThan(12);
    expect((errors[1] as number) / (errors[2] as number)).toBeGreaterThan(12);
  });

  it('carries curvature over inner nodes without a step', () => {
    const q = quarterCircle(80, 10);
    const curve = splineThrough(q.nodes, q.spacing, q.start, q.end);
    for (let i = 1; i < 10; i++) {
      const s = curve.arcLengthMm[i] as number;
      const before = curveAt(curve, s - 1e-7).curvature;
      const after = curveAt(curve, s + 1e-7).curvature;
      expect(Math.abs(before - after)).toBeLessThan(1e-8);
    }
  });

  it('answers places by arc length', () => {
    const line = joinCurves([straightCurve([0, 0, 0], [30, 0, 0]), straightCurve([30, 0, 0], [30, 40, 0])]);
    expect(curveLengthMm(line)).toBeCloseTo(70, 12);
    expect(distance(curveAt(line, 50).point, [30, 20, 0])).toBeLessThan(1e-12);
    expect(curveAt(line, 50).tangent).toEqual([0, 1, 0]);
  });

  it('is the same curve the other way round', () => {
    const q = quarterCircle(60, 6);
    const curve = splineThrough(q.nodes, q.spacing, q.start, q.end);
    const back = reversedCurve(curve);
    const total = curveLengthMm(curve);
    for (const s of [0, 10, 33.3, total]) {
      const there = curveAt(curve, s);
      const here = curveAt(back, total - s);
      for (let k = 0; k < 3; k++) {
        expect(here.point[k]).toBeCloseTo(there.point[k] as number, 8);
        expect(here.tangent[k]).toBeCloseTo(-(there.tangent[k] as number), 8);
      }
    }
  });
});
