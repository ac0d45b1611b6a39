import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type RodProblem, type RodShape, relaxRod } from '../../../../shared/solve/rod/index.ts';
import { symmetricEigen } from '../../../../shared/solve/rod/symmetricEigen.ts';
import { lowestEigenvalue } from '../../../oracles/elasticaHessian.ts';

const EDGES = 16;
const DOWNWARDS: Vec3 = [1, 0, -0.05];
const UPWARDS: Vec3 = [1, 0, 0.02];

function held(span: number, a: Vec3, b: Vec3, more: Partial<RodProblem> = {}): RodProblem {
  return {
    edges: EDGES,
    lengthMm: 500,
    a: { kind: 'held', point: [0, 0, 0], direction: unit(a) },
    b: { kind: 'held', point: [500 * span, 0, 0], direction: unit(b) },
    stiffnessNmm2: 1e5,
    weightNPerMm: 0,
    down: [0, 0, -1],
    guess: new Float64Array([0, 0, 0, 500 * span, 0, 0]),
    acceptSaddle: true,
    ...more,
  };
}

function lowestOf(problem: RodProblem, shape: RodShape): number {
  const l = problem.lengthMm / EDGES;
  const edges = Array.from({ length: EDGES }, (_, k) =>
    [0, 1, 2].map((i) => (shape.nodes[3 * k + 3 + i]! - shape.nodes[3 * k + i]!) / l),
  );
  return lowestEigenvalue({
    edges,
    start: shape.startDirection,
    end: shape.endDirection,
    lengthMm: problem.lengthMm,
    stiffnessNmm2: problem.stiffnessNmm2,
    endForceN: shape.endForceN,
  });
}

// Pointing away from the side it bulges to, an arch is unstable at any span.
test.each([0.95, 0.6])('an arch on the wrong side of its ends, span %f, is a saddle to both', (span) => {
  const problem = held(span, UPWARDS, DOWNWARDS);
  const shape = relaxRod(problem);
  expect(shape.outcome).toBe('converged');
  expect(lowestOf(problem, shape)).toBeLessThan(-1e-3);
  expect(shape.stable).toBe(false);
});

describe('stable agrees with the dense Hessian on the closure', () => {
  // In a plane, slightly askew, so that no turn about the chord is free and the lowest eigenvalue is not simply 0.
  test.each([0.95, 0.8, 0.7, 0.6, 0.5, 0.4, 0.2])('plane arches, span %f', (span) => {
    const problem = held(span, DOWNWARDS, UPWARDS);
    const shape = relaxRod(problem);
    expect(shape.outcome).toBe('converged');
    const lowest = lowestOf(problem, shape);
    expect(Math.abs(lowest)).toBeGreaterThan(1e-3);
    expect(shape.stable).toBe(lowest > 0);
  });
  test('some of those arches are stable and some are not, so the check can fail', () => {
    expect(relaxRod(held(0.95, DOWNWARDS, UPWARDS)).stable).toBe(true);
    expect(relaxRod(held(0.2, DOWNWARDS, UPWARDS)).stable).toBe(false);
  });
  test('12 seeded shapes in space', () => {
    const random = seededRandom(12);
    const direction = (): Vec3 => [2 * random() - 1, 2 * random() - 1, 2 * random() - 1];
    for (let i = 0; i < 12; i++) {
      const problem = held(0.2 + 0.6 * random(), direction(), direction(), { acceptSaddle: false });
      const shape = relaxRod(problem);
      expect(shape.outcome).toBe('converged');
      expect(shape.stable).toBe(true);
      expect(lowestOf(problem, shape)).toBeGreaterThan(0);
    }
  });
  test('an arch free to turn about its chord is not called unstable', () => {
    const problem = held(0.9, [1, 0, 0], [1, 0, 0]);
    const shape = relaxRod(problem);
    expect(Math.abs(lowestOf(problem, shape))).toBeLessThan(1e-3);
    expect(shape.stable).toBe(true);
  });
});

test('eigenvalues of a small matrix: the second difference of 4 points, 2 - 2 cos(k pi / 5)', () => {
  const m = new Float64Array([2, -1, 0, 0, -1, 2, -1, 0, 0, -1, 2, -1, 0, 0, -1, 2]);
  const values = new Float64Array(4);
  const vectors = new Float64Array(16);
  symmetricEigen(m, 4, values, vectors);
  const known = [1, 2, 3, 4].map((k) => 2 - 2 * Math.cos((k * Math.PI) / 5));
  for (const [i, value] of [...values].sort((a, b) => a - b).entries()) expect(value).toBeCloseTo(known[i]!, 13);
});
