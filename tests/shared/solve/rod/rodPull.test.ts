import { describe, expect, it } from 'vitest';
import { addScaled, distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type RodProblem, relaxRod } from '../../../../shared/solve/rod/index.ts';

/** A hose with some slack between two ends in line, without weight. */
const STRAIGHT: RodProblem = {
  edges: 64,
  lengthMm: 400,
  a: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
  b: { kind: 'held', point: [390, 0, 0], direction: [1, 0, 0] },
  stiffnessNmm2: 1.5e5,
  weightNPerMm: 0,
  down: [0, 0, -1],
  guess: new Float64Array([0, 0, 0, 200, 0, 30, 390, 0, 0]),
};

function nodeOf(nodes: Float64Array, k: number): Vec3 {
  return [nodes[3 * k]!, nodes[3 * k + 1]!, nodes[3 * k + 2]!];
}

describe('a node drawn to a place', () => {
  it('comes to it, with the rest of the hose at rest', () => {
    const to: Vec3 = [195, 20, 10];
    const shape = relaxRod({ ...STRAIGHT, pulls: [{ node: 32, point: to, stiffnessNPerMm: 5000 }] });
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    expect(distance(nodeOf(shape.nodes, 32), to)).toBeLessThan(0.02);
  });

  it('pulled to where it lies anyway, leaves the hose as it is', () => {
    const free = relaxRod(STRAIGHT);
    const point = nodeOf(free.nodes, 20);
    const held = relaxRod({ ...STRAIGHT, guess: free.nodes, pulls: [{ node: 20, point, stiffnessNPerMm: 500 }] });
    for (let k = 0; k <= 64; k++) expect(distance(nodeOf(held.nodes, k), nodeOf(free.nodes, k))).toBeLessThan(1e-4);
  });

  it('is held with the force that changes the energy so, by finite differences', () => {
    const stiffnessNPerMm = 500;
    const at = (y: number) => {
      const point: Vec3 = [190, y, 12];
      const shape = relaxRod({ ...STRAIGHT, pulls: [{ node: 30, point, stiffnessNPerMm }] });
      const off = distance(nodeOf(shape.nodes, 30), point);
      const force = stiffnessNPerMm * (point[1] - nodeOf(shape.nodes, 30)[1]);
      return { energy: shape.bendingNmm + 0.5 * stiffnessNPerMm * off * off, force };
    };
    const step = 0.05;
    const slope = (at(25 + step).energy - at(25 - step).energy) / (2 * step);
    expect(at(25).force / slope).toBeCloseTo(1, 3);
  });

  it('of an arch in a plane, moved out of it, is the arch turned about its chord', () => {
    const free = relaxRod(STRAIGHT);
    const top = nodeOf(free.nodes, 32);
    const radius = Math.hypot(top[1], top[2]);
    const to: Vec3 = addScaled([top[0], 0, 0], [0, Math.SQRT1_2, Math.SQRT1_2], radius);
    const held = relaxRod({ ...STRAIGHT, pulls: [{ node: 32, point: to, stiffnessNPerMm: 500 }] });
    expect(held.bendingNmm / free.bendingNmm).toBeCloseTo(1, 6);
    expect(distance(nodeOf(held.nodes, 32), to)).toBeLessThan(1e-3);
  });

  it('out of reach, is drawn with the strength of the hand and no more', () => {
    const strengthN = 40;
    const node = 32;
    const point: Vec3 = [195, 400, 0];
    const shape = relaxRod({ ...STRAIGHT, pulls: [{ node, point, stiffnessNPerMm: 500, strengthN }] });
    expect(shape.outcome).toBe('converged');
    // The hand's force and what the ends answer with are in balance (ends: their force, and that of the other end).
    const along = distance(nodeOf(shape.nodes, node), point);
    expect(along).toBeGreaterThan(300);
    expect(nodeOf(shape.nodes, node)[1]).toBeGreaterThan(20);
    const moved = relaxRod({ ...STRAIGHT, pulls: [{ node, point: [195, 800, 0], stiffnessNPerMm: 500, strengthN }] });
    expect(nodeOf(moved.nodes, node)[1] - nodeOf(shape.nodes, node)[1]).toBeLessThan(0.5);
  });
});
