import { describe, expect, test } from 'vitest';
import { distance, dot, scale, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type RodProblem, type RodShape, relaxRod } from '../../../../shared/solve/rod/index.ts';

const STIFFNESS_NMM2 = 2e5;

interface Curve {
  readonly lengthMm: number;
  point(s: number): Vec3;
  direction(s: number): Vec3;
}

/** A hose held at both ends of a curve, started from a polyline of 12 points of it, or from `guess`. */
function heldOn(curve: Curve, edges: number, more: Partial<RodProblem> = {}): RodProblem {
  const guess = new Float64Array(36);
  for (let i = 0; i < 12; i++) guess.set(curve.point((curve.lengthMm * i) / 11), 3 * i);
  return {
    edges,
    lengthMm: curve.lengthMm,
    a: { kind: 'held', point: curve.point(0), direction: curve.direction(0) },
    b: { kind: 'held', point: curve.point(curve.lengthMm), direction: curve.direction(curve.lengthMm) },
    stiffnessNmm2: STIFFNESS_NMM2,
    weightNPerMm: 0,
    down: [0, 0, -1],
    guess,
    ...more,
  };
}

/** Largest distance of a node from the curve's point at its arc length, mm. */
function errorMm(shape: RodShape, curve: Curve): number {
  const edges = shape.nodes.length / 3 - 1;
  let worst = 0;
  for (let k = 0; k <= edges; k++) {
    const node: Vec3 = [shape.nodes[3 * k]!, shape.nodes[3 * k + 1]!, shape.nodes[3 * k + 2]!];
    worst = Math.max(worst, distance(node, curve.point((curve.lengthMm * k) / edges)));
  }
  return worst;
}

function arc(radiusMm: number, angleRad: number): Curve {
  return {
    lengthMm: radiusMm * angleRad,
    point: (s) => [radiusMm * Math.sin(s / radiusMm), radiusMm * (1 - Math.cos(s / radiusMm)), 0],
    direction: (s) => [Math.cos(s / radiusMm), Math.sin(s / radiusMm), 0],
  };
}

function helix(radiusMm: number, risePerRadMm: number, turns: number): Curve {
  const perRad = Math.hypot(radiusMm, risePerRadMm);
  return {
    lengthMm: 2 * Math.PI * turns * perRad,
    point: (s) => [radiusMm * Math.cos(s / perRad), radiusMm * Math.sin(s / perRad), (risePerRadMm * s) / perRad],
    direction: (s) =>
      scale([-radiusMm * Math.sin(s / perRad), radiusMm * Math.cos(s / perRad), risePerRadMm] as Vec3, 1 / perRad),
  };
}

describe.each([
  ['a quarter circle', Math.PI / 2],
  ['a half circle: antiparallel ends 2 L / pi apart', Math.PI],
])('%s', (_, angle) => {
  // A circular arc is an elastica without force: moment EI / R everywhere (Euler 1744).
  const curve = arc(150, angle);
  const shape = relaxRod(heldOn(curve, 128));

  test('is reproduced within 0.01 % of its length, and is stable', () => {
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    expect(errorMm(shape, curve)).toBeLessThan(1e-4 * curve.lengthMm);
  });
  test('needs no force', () => {
    const unitN = STIFFNESS_NMM2 / curve.lengthMm ** 2;
    expect(Math.hypot(...shape.endForceN) / unitN).toBeLessThan(2e-3);
  });
  test('has the energy EI L / (2 R^2) within 0.01 %', () => {
    const energy = (STIFFNESS_NMM2 * curve.lengthMm) / (2 * 150 ** 2);
    expect(Math.abs(shape.energyNmm / energy - 1)).toBeLessThan(1e-4);
  });
  test('is reached from the chord as well', () => {
    const end = curve.point(curve.lengthMm);
    const cold = relaxRod(heldOn(curve, 128, { guess: new Float64Array([0, 0, 0, ...end]) }));
    expect(cold.stable).toBe(true);
    expect(errorMm(cold, curve)).toBeLessThan(1e-4 * curve.lengthMm);
  });
});

describe('a helix held at its ends', () => {
  // Any helix is an equilibrium of a rod without twisting moment: bending moment EI kappa along the binormal, and a
  // force along the axis of -EI tau sqrt(kappa^2 + tau^2) (Love, art. 270, with the twisting couple 0).
  const radius = 120;
  const rise = 60;
  const curve = helix(radius, rise, 0.4);
  const shape = relaxRod(heldOn(curve, 128));
  const perRad = Math.hypot(radius, rise);

  test('is reproduced within 0.02 % of its length, and is stable', () => {
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    expect(errorMm(shape, curve)).toBeLessThan(2e-4 * curve.lengthMm);
  });
  test('is thrust together along its axis by EI tau sqrt(kappa^2 + tau^2), within 0.5 %', () => {
    const tau = rise / perRad ** 2;
    const thrust = (STIFFNESS_NMM2 * tau) / perRad;
    expect(Math.abs(shape.endForceN[2] / -thrust - 1)).toBeLessThan(5e-3);
    expect(Math.hypot(shape.endForceN[0], shape.endForceN[1]) / thrust).toBeLessThan(5e-3);
  });
  test('has the energy EI kappa^2 L / 2 within 0.05 %', () => {
    const kappa = radius / perRad ** 2;
    expect(Math.abs(shape.energyNmm / (0.5 * STIFFNESS_NMM2 * kappa ** 2 * curve.lengthMm) - 1)).toBeLessThan(5e-4);
  });
});

describe('a limp hose between level ends', () => {
  // The catenary: span D = 2 a asinh(L / 2a), sag a (cosh(D / 2a) - 1) (Bernoulli, Huygens, Leibniz 1691).
  const span = 500;
  const parameter = 300;
  const lengthMm = 2 * parameter * Math.sinh(span / 2 / parameter);
  const sag = parameter * (Math.cosh(span / 2 / parameter) - 1);
  const slope = Math.sinh(span / 2 / parameter);
  const weightNPerMm = 0.005;
  const shape = relaxRod({
    edges: 256,
    lengthMm,
    a: { kind: 'held', point: [0, 0, 0], direction: unit([1, 0, -slope]) },
    b: { kind: 'held', point: [span, 0, 0], direction: unit([1, 0, slope]) },
    stiffnessNmm2: 1,
    weightNPerMm,
    down: [0, 0, -1],
    guess: new Float64Array([0, 0, 0, span, 0, 0]),
  });

  test('sags like a catenary within 0.1 % of its length', () => {
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    expect(Math.abs(-shape.nodes[3 * 128 + 2]! - sag)).toBeLessThan(1e-3 * lengthMm);
  });
  test('pulls with w a level and half its weight upwards, within 0.5 %', () => {
    expect(Math.abs(shape.endForceN[0] / (weightNPerMm * parameter) - 1)).toBeLessThan(5e-3);
    expect(Math.abs(shape.endForceN[2] / (weightNPerMm * lengthMm * 0.5) - 1)).toBeLessThan(5e-3);
  });
});

describe('length and reach', () => {
  const straight: Curve = { lengthMm: 400, point: (s) => [s, 0, 0], direction: () => [1, 0, 0] };
  test('a hose as long as the distance, ends in line, is a straight line without bending', () => {
    const shape = relaxRod(heldOn(straight, 32));
    expect(shape.outcome).toBe('converged');
    expect(errorMm(shape, straight)).toBeLessThan(1e-9);
    expect(shape.bendingNmm).toBeLessThan(1e-20);
  });
  test('a shorter one is too short', () => {
    expect(relaxRod(heldOn(straight, 32, { lengthMm: 399.99 })).outcome).toBe('too-short');
  });
  test('one of just the distance whose end points elsewhere is too short', () => {
    const b = { kind: 'held', point: [400, 0, 0], direction: [0, 1, 0] } as const;
    expect(relaxRod(heldOn(straight, 32, { b })).outcome).toBe('too-short');
  });
  test('one that reaches only when its end has turned towards it is laid', () => {
    const b = {
      kind: 'turning',
      axisPoint: [430, 0, 0],
      axis: [0, 0, 1],
      point: [460, 0, 0],
      direction: [0, 1, 0],
      clockRad: 0,
    } as const;
    const shape = relaxRod(heldOn(straight, 32, { b, lengthMm: 420 }));
    expect(shape.outcome).toBe('converged');
    expect(shape.closureMm).toBeLessThan(1e-6);
  });
  test('one that reaches at no clock is too short', () => {
    const b = {
      kind: 'turning',
      axisPoint: [430, 0, 0],
      axis: [0, 0, 1],
      point: [460, 0, 0],
      direction: [0, 1, 0],
      clockRad: 0,
    } as const;
    expect(relaxRod(heldOn(straight, 32, { b, lengthMm: 399 })).outcome).toBe('too-short');
  });
  test('work that is stopped answers so', () => {
    const watch = { isCancelled: () => true, report: () => undefined, now: () => 0 };
    expect(relaxRod(heldOn(arc(150, 2), 32, { lengthMm: 340 }), watch).outcome).toBe('cancelled');
  });
  test('too few iterations are said to be too few', () => {
    const shape = relaxRod(heldOn(arc(150, 2), 32, { lengthMm: 340, maxIterations: 1 }));
    expect(shape.outcome).toBe('not-converged');
    expect(dot(shape.startDirection, [1, 0, 0])).toBe(1);
  });
});
