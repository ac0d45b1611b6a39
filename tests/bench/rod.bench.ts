import { bench, describe } from 'vitest';
import { unit, type Vec3 } from '../../shared/base/vec3.ts';
import { type RodProblem, relaxRod } from '../../shared/solve/rod/index.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/** How long a hose takes to find its natural shape. */

const A: Vec3 = [10, -20, 30];
const B: Vec3 = [390, 60, -40];

/** 15 % slack, ends askew, its own weight, from the straight line between the ends. */
function cold(edges: number): RodProblem {
  return {
    edges,
    lengthMm: 460,
    a: { kind: 'held', point: A, direction: unit([1, 0.3, 0.4]) },
    b: { kind: 'held', point: B, direction: unit([0.8, -0.5, 0.2]) },
    stiffnessNmm2: 1.5e5,
    weightNPerMm: 0.004,
    down: [0, 0, -1],
    guess: new Float64Array([...A, ...B]),
  };
}

/** The same hose from its own shape after end B moved by 2 mm: what dragging a port asks for. */
function warm(edges: number): RodProblem {
  const problem = cold(edges);
  const { nodes } = relaxRod(problem);
  return { ...problem, b: { ...problem.b, point: [B[0] + 1.2, B[1] - 0.9, B[2] - 1.3] }, guess: nodes };
}

describe('natural shape of a hose', () => {
  bench(REFERENCE, () => keep(reference()));
  for (const edges of [32, 64, 128]) {
    const coldProblem = cold(edges);
    const warmProblem = warm(edges);
    bench(`cold, ${edges} edges`, () => {
      keep(relaxRod(coldProblem).energyNmm);
    });
    bench(`warm, ${edges} edges, end moved 2 mm`, () => {
      keep(relaxRod(warmProblem).energyNmm);
    });
  }
});
