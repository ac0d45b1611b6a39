import { describe, expect, test } from 'vitest';
import { distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { resampleToLength } from '../../../../shared/solve/rod/index.ts';

const DOWN: Vec3 = [0, 0, -1];

function pointsOf(nodes: Float64Array): Vec3[] {
  return Array.from({ length: nodes.length / 3 }, (_, k) => [nodes[3 * k]!, nodes[3 * k + 1]!, nodes[3 * k + 2]!]);
}

function chordsOf(nodes: Float64Array): number[] {
  const points = pointsOf(nodes);
  return points.slice(1).map((p, i) => distance(p, points[i]!));
}

function lengthOf(nodes: Float64Array): number {
  return chordsOf(nodes).reduce((sum, c) => sum + c, 0);
}

describe('a straight line with slack', () => {
  const nodes = resampleToLength(new Float64Array([0, 0, 0, 300, 0, 0]), 330, 64, DOWN);
  test('keeps its ends and takes the length within 0.2 %', () => {
    expect(pointsOf(nodes)[0]).toEqual([0, 0, 0]);
    expect(distance(pointsOf(nodes)[64]!, [300, 0, 0])).toBeLessThan(1e-9);
    expect(Math.abs(lengthOf(nodes) / 330 - 1)).toBeLessThan(2e-3);
  });
  test('bulges towards gravity only, smoothly, in equal steps', () => {
    for (const [, y, z] of pointsOf(nodes)) {
      expect(y).toBe(0);
      expect(z).toBeLessThanOrEqual(0);
    }
    expect(pointsOf(nodes)[32]![2]).toBeLessThan(-40);
    const chords = chordsOf(nodes);
    expect(Math.max(...chords) / Math.min(...chords)).toBeLessThan(1.01);
  });
  test('upright, it bulges to a fixed side', () => {
    const upright = resampleToLength(new Float64Array([0, 0, 0, 0, 0, 300]), 330, 64, DOWN);
    expect(Math.abs(lengthOf(upright) / 330 - 1)).toBeLessThan(2e-3);
    expect(upright).toEqual(resampleToLength(new Float64Array([0, 0, 0, 0, 0, 300]), 330, 64, DOWN));
  });
  test('of no length at all, it becomes a loop of about the length', () => {
    const loop = resampleToLength(new Float64Array([5, 5, 5, 5, 5, 5]), 200, 64, DOWN);
    expect(Math.abs(lengthOf(loop) / 200 - 1)).toBeLessThan(0.02);
  });
});

test('a curved line keeps its sides and is stretched or flattened to the length', () => {
  const corner = new Float64Array([0, 0, 0, 200, 0, 0, 200, 200, 0]);
  for (const wanted of [320, 400, 450]) {
    const nodes = resampleToLength(corner, wanted, 80, DOWN);
    expect(Math.abs(lengthOf(nodes) / wanted - 1)).toBeLessThan(5e-3);
    for (const [x, y, z] of pointsOf(nodes)) {
      expect(z).toBe(0);
      expect(x - y).toBeGreaterThan(-1e-9);
    }
  }
});

test('a length below the distance of the ends gives the chord', () => {
  const nodes = resampleToLength(new Float64Array([0, 0, 0, 100, 50, 0, 200, 0, 0]), 150, 20, DOWN);
  for (const [k, p] of pointsOf(nodes).entries()) expect(distance(p, [10 * k, 0, 0])).toBeLessThan(1e-9);
});
