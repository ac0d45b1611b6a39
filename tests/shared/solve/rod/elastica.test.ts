import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { type RodProblem, type RodShape, relaxRod } from '../../../../shared/solve/rod/index.ts';
import { clampedElastica, completeE, completeK, jacobi } from '../../../oracles/elastica.ts';

const LENGTH_MM = 600;
const STIFFNESS_NMM2 = 1e5;

/** Both ends held along +x, span * L apart: Euler's clamped elastica. */
function clamped(span: number, edges: number): RodProblem {
  return {
    edges,
    lengthMm: LENGTH_MM,
    a: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
    b: { kind: 'held', point: [span * LENGTH_MM, 0, 0], direction: [1, 0, 0] },
    stiffnessNmm2: STIFFNESS_NMM2,
    weightNPerMm: 0,
    down: [0, 0, -1],
    guess: new Float64Array([0, 0, 0, span * LENGTH_MM, 0, 0]),
    // The plane curve is the known answer; where a hose free to leave the plane has a lower shape it is still found.
    acceptSaddle: true,
  };
}

function nodeAt(shape: RodShape, k: number): Vec3 {
  return [shape.nodes[3 * k]!, shape.nodes[3 * k + 1]!, shape.nodes[3 * k + 2]!];
}

/** Largest distance of a node from the closed form at the same arc length, against L. */
function shapeError(span: number, edges: number): number {
  const shape = relaxRod(clamped(span, edges));
  const known = clampedElastica(span);
  let worst = 0;
  for (let k = 0; k <= edges; k++) {
    const [x, y, z] = nodeAt(shape, k);
    const [kx, ky] = known.pointAt(k / edges);
    // The strip may bulge to any side; here it goes the way of gravity, whose weight is 0.
    worst = Math.max(worst, Math.hypot(x / LENGTH_MM - kx, z / LENGTH_MM + ky, y / LENGTH_MM));
  }
  return worst;
}

function relativeEnergy(shape: RodShape): number {
  return (shape.energyNmm * LENGTH_MM) / STIFFNESS_NMM2;
}

// D/L, k, h/L, kappa_max L, P/Pcr, E_b L/EI: the same closed form (Love, art. 263), evaluated apart from this oracle.
const TABLE = [
  [0.99, 0.09993732, 0.06346272, 1.2590029, 1.0050283, 0.39577485],
  [0.95, 0.22289802, 0.14011061, 2.8368174, 1.0257243, 1.9990679],
  [0.9, 0.31419362, 0.19492431, 4.0515267, 1.0529869, 4.0504089],
  [0.8, 0.44128377, 0.26631859, 5.8495764, 1.1127387, 8.3229395],
  [0.6, 0.61455211, 0.34871252, 8.6644277, 1.258759, 17.658627],
  [0.4, 0.73921035, 0.38997185, 11.209669, 1.4562294, 28.334564],
  [0.2, 0.83522187, 0.4031316, 13.843531, 1.7396837, 40.877704],
] as const;

describe('the oracle itself', () => {
  test('has the complete integrals of Abramowitz & Stegun, table 17.1 (m = k^2 = 0.5)', () => {
    expect(completeK(Math.SQRT1_2)).toBeCloseTo(1.854074677301372, 13);
    expect(completeE(Math.SQRT1_2)).toBeCloseTo(1.350643881047675, 13);
  });
  test('has cn of a quarter period 0 and a half period -1, and E(2K) = 2 E', () => {
    const K = completeK(0.8);
    expect(jacobi(K, 0.8).cn).toBeCloseTo(0, 12);
    expect(jacobi(2 * K, 0.8).cn).toBeCloseTo(-1, 12);
    expect(jacobi(2 * K, 0.8).incompleteE).toBeCloseTo(2 * completeE(0.8), 12);
  });
  test.each(TABLE)('agrees with the table at D/L = %f', (span, k, rise, curvature, thrust, energy) => {
    const known = clampedElastica(span);
    expect(known.k).toBeCloseTo(k, 7);
    expect(known.rise).toBeCloseTo(rise, 7);
    expect(known.maxCurvature / curvature).toBeCloseTo(1, 7);
    expect(known.thrustRatio / thrust).toBeCloseTo(1, 6);
    expect(known.energy / energy).toBeCloseTo(1, 7);
  });
});

describe.each(TABLE)('a hose with both ends along the chord, D/L = %f', (span) => {
  const known = clampedElastica(span);
  const fine = relaxRod(clamped(span, 256));

  test('settles', () => {
    expect(fine.outcome).toBe('converged');
    expect(fine.closureMm).toBeLessThan(1e-6);
  });
  test('has the height of Euler’s elastica within 0.1 % of its length', () => {
    const [, y, z] = nodeAt(fine, 128);
    expect(Math.abs(Math.hypot(y, z) / LENGTH_MM - known.rise)).toBeLessThan(1e-3);
  });
  test('has its energy within 0.1 %', () => {
    expect(Math.abs(relativeEnergy(fine) / known.energy - 1)).toBeLessThan(1e-3);
  });
  test('has its thrust within 0.1 %, and nothing across', () => {
    const unit = (4 * Math.PI ** 2 * STIFFNESS_NMM2) / LENGTH_MM ** 2;
    expect(Math.abs(-fine.endForceN[0] / unit / known.thrustRatio - 1)).toBeLessThan(1e-3);
    expect(Math.hypot(fine.endForceN[1], fine.endForceN[2]) / unit).toBeLessThan(1e-6);
  });
  test('has its largest curvature in the middle within 0.2 %', () => {
    const before = nodeAt(fine, 127);
    const here = nodeAt(fine, 128);
    const after = nodeAt(fine, 129);
    const l = LENGTH_MM / 256;
    const dot = [0, 1, 2].reduce((sum, i) => sum + (here[i]! - before[i]!) * (after[i]! - here[i]!), 0) / (l * l);
    const curvature = (2 * Math.tan(Math.acos(dot) / 2)) / l;
    expect(Math.abs((curvature * LENGTH_MM) / known.maxCurvature - 1)).toBeLessThan(2e-3);
  });
  test('lies on the closed form everywhere within 0.1 % of its length', () => {
    expect(shapeError(span, 256)).toBeLessThan(1e-3);
  });
  test('errs four times less with twice the edges, in shape and in energy', () => {
    expect(shapeError(span, 64) / shapeError(span, 128)).toBeGreaterThan(3.4);
    expect(shapeError(span, 64) / shapeError(span, 128)).toBeLessThan(4.6);
    const energyError = (n: number): number => relativeEnergy(relaxRod(clamped(span, n))) - known.energy;
    expect(energyError(64) / energyError(128)).toBeGreaterThan(3.4);
    expect(energyError(64) / energyError(128)).toBeLessThan(4.6);
  });
});
