import { bench, describe } from 'vitest';
import { anySquareTo, turnAbout, unit, type Vec3 } from '../../shared/base/vec3.ts';
import { materialAtEnd, type RodProblem, relaxRod } from '../../shared/solve/rod/index.ts';
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

/** The hose with its ends locked in it after one was turned by 60 degrees, GJ = 2/3 EI. */
function locked(problem: RodProblem): RodProblem {
  const materialA = anySquareTo(problem.a.direction);
  const turnRad = Math.PI / 3;
  const materialB = turnAbout(materialAtEnd(relaxRod(problem), materialA, 0), problem.b.direction, turnRad);
  return { ...problem, twist: { torsionalStiffnessNmm2: 1e5, materialA, materialB, nearRad: turnRad } };
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
  const lockedProblem = locked(cold(64));
  const lockedWarm = locked(warm(64));
  bench('cold, 64 edges, ends locked and one turned by 60 degrees', () => {
    keep(relaxRod(lockedProblem).energyNmm);
  });
  bench('warm, 64 edges, ends locked, one turned by 60 degrees and moved 2 mm', () => {
    keep(relaxRod(lockedWarm).energyNmm);
  });
});
