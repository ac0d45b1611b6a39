import { describe, expect, test } from 'vitest';
import { distance, scale, turnAbout, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type RodProblem, type RodShape, relaxRod } from '../../../../shared/solve/rod/index.ts';
import { writhe } from '../../../oracles/writhe.ts';

/** Known answers of twisted rods. */

const STIFFNESS_NMM2 = 2e5;
const TORSIONAL_NMM2 = 1.4e5;
const NO_WEIGHT = { weightNPerMm: 0, down: [0, 0, -1] as Vec3, stiffnessNmm2: STIFFNESS_NMM2 };

function nodesOf(shape: RodShape): Vec3[] {
  return Array.from(
    { length: shape.nodes.length / 3 },
    (_, k): Vec3 => [shape.nodes[3 * k]!, shape.nodes[3 * k + 1]!, shape.nodes[3 * k + 2]!],
  );
}

describe('a hose a hair longer than its clamps are apart, wrung', () => {
  // Small sideways movement w = y + i z of a straight rod under tension T and twisting moment M, EI = L = 1:
  // w'''' - i M w''' - T w'' = 0, so w = a + b s + c exp(i p s) + d exp(i q s) with p, q = M/2 +- k, k^2 = M^2/4 - T.
  // Clamped at s = -1/2 and 1/2 it leaves the straight line where the determinant below is 0 (p and q by hand: the sums
  // and differences of w' = 0 and w = 0 at the ends). A rod with next to no slack keeps to that T whatever M is.
  const determinant = (moment: number, k: number): number => {
    const p = moment / 2 + k;
    const q = moment / 2 - k;
    const side = (x: number): number => x * Math.cos(x / 2) - 2 * Math.sin(x / 2);
    return p * Math.sin(p / 2) * side(q) - q * Math.sin(q / 2) * side(p);
  };
  /** The largest tension at which the straight rod gives way: from k = 0 (a double root of its own) to the first sign change. */
  const tensionAt = (moment: number): number => {
    let k = 0.05;
    const sign = Math.sign(determinant(moment, k));
    while (Math.sign(determinant(moment, k + 0.01)) === sign) k += 0.01;
    let high = k + 0.01;
    for (let i = 0; i < 60; i++) {
      const middle = (k + high) / 2;
      if (Math.sign(determinant(moment, middle)) === sign) k = middle;
      else high = middle;
    }
    return moment ** 2 / 4 - k * k;
  };
  const lengthMm = 500;
  const unitN = STIFFNESS_NMM2 / lengthMm ** 2;
  const unitNmm = STIFFNESS_NMM2 / lengthMm;
  const wrung = (moment: number): RodShape => {
    const spanMm = lengthMm * (1 - 1e-5);
    const turn = (moment * STIFFNESS_NMM2) / TORSIONAL_NMM2;
    return relaxRod({
      ...NO_WEIGHT,
      edges: 128,
      lengthMm,
      a: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
      b: { kind: 'held', point: [spanMm, 0, 0], direction: [1, 0, 0] },
      twist: {
        torsionalStiffnessNmm2: TORSIONAL_NMM2,
        materialA: [0, 1, 0],
        materialB: turnAbout([0, 1, 0], [1, 0, 0], turn),
        nearRad: turn,
      },
      guess: new Float64Array([0, 0, 0, spanMm, 0, 0]),
    });
  };

  test('the closed form has Euler’s clamped column at M = 0, T = -4 pi^2', () => {
    expect(tensionAt(1e-6)).toBeCloseTo(-4 * Math.PI ** 2, 5);
  });
  test('and tan(M/2) = M/2 at T = 0: M = 8.9868 (Greenhill 1883, both ends clamped)', () => {
    const critical = 2 * 4.493409457909064;
    expect(Math.tan(critical / 2)).toBeCloseTo(critical / 2, 8);
    expect(tensionAt(critical)).toBeCloseTo(0, 5);
  });
  test('and comes to M^2 = 4 EI T for a long rod (Greenhill 1883)', () => {
    expect(tensionAt(60) / (60 ** 2 / 4)).toBeGreaterThan(0.98);
    expect(tensionAt(200) / (200 ** 2 / 4)).toBeGreaterThan(0.998);
  });
  test.each([0, 3, 6, 8.9868, 12, 16])(
    'moment %f EI/L: its tension is the closed form’s within 0.3 % of 4 pi^2',
    (moment) => {
      const shape = wrung(moment);
      expect(shape.outcome).toBe('converged');
      expect(shape.stable).toBe(true);
      const reached = shape.torqueNmm / unitNmm;
      expect(Math.abs(reached - moment)).toBeLessThan(0.01 + 0.01 * moment);
      expect(Math.abs(shape.endForceN[0] / unitN - tensionAt(Math.max(1e-6, reached)))).toBeLessThan(
        0.003 * 4 * Math.PI ** 2,
      );
    },
  );
  test('a mirrored turn has the mirrored twist and the same tension', () => {
    expect(wrung(-6).twistRad).toBeCloseTo(-wrung(6).twistRad, 6);
    expect(wrung(-6).endForceN[0]).toBeCloseTo(wrung(6).endForceN[0], 6);
  });
});

describe('a ring: both ends clamped at one point along one line', () => {
  // Michell (1890), Zajac (1962): a ring closed with twist Tw stays plane up to Tw = 2 pi sqrt(3) EI / GJ. Clamped in one
  // place it gives way at the same twist: any movement of the whole ring followed by a rigid one keeps the clamp still.
  const lengthMm = 600;
  const radius = lengthMm / (2 * Math.PI);
  const critical = (2 * Math.PI * Math.sqrt(3) * STIFFNESS_NMM2) / TORSIONAL_NMM2;
  const ring = (twist: number, more: Partial<RodProblem> = {}): RodShape => {
    const guess = new Float64Array(3 * 129);
    for (let k = 0; k <= 128; k++) {
      const angle = (2 * Math.PI * k) / 128;
      guess.set([radius * Math.sin(angle), radius * (1 - Math.cos(angle)), 0], 3 * k);
    }
    return relaxRod({
      ...NO_WEIGHT,
      edges: 128,
      lengthMm,
      a: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
      b: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
      twist: {
        torsionalStiffnessNmm2: TORSIONAL_NMM2,
        materialA: [0, 0, 1],
        materialB: turnAbout([0, 0, 1], [1, 0, 0], twist),
        nearRad: twist,
      },
      guess,
      ...more,
    });
  };

  test.each([0.5, 0.9, 0.99, -0.99])('%f of the critical twist: the plane ring is stable', (share) => {
    const shape = ring(share * critical, { acceptSaddle: true });
    expect(shape.outcome).toBe('converged');
    for (const point of nodesOf(shape))
      expect(Math.abs(distance(point, [0, radius, 0]) / radius - 1)).toBeLessThan(1e-3);
    expect(shape.twistRad).toBeCloseTo(share * critical, 4);
    expect(shape.stable).toBe(true);
  });
  test.each([1.01, 1.1, -1.01])('%f of it: it is not', (share) => {
    const shape = ring(share * critical, { acceptSaddle: true });
    expect(shape.outcome).toBe('converged');
    for (const point of nodesOf(shape))
      expect(Math.abs(distance(point, [0, radius, 0]) / radius - 1)).toBeLessThan(1e-3);
    expect(shape.stable).toBe(false);
  });
  /** One side drawn up, the other down. */
  const pulls = [
    { node: 32, point: [radius, radius, 70] as Vec3, stiffnessNPerMm: 1 },
    { node: 80, point: [-radius, 1.2 * radius, -60] as Vec3, stiffnessNPerMm: 1 },
  ];
  // The clamp's direction, between last edge and first, as an edge of its own that is too short to matter.
  const writheOf = (shape: RodShape): number => writhe([...nodesOf(shape).slice(1, -1), [-1e-5, 0, 0], [1e-5, 0, 0]]);

  test('let go, it leaves the plane and swings through itself, which takes two whole turns out of it', () => {
    // Twist and writhe of a closed rod add up to a whole (Calugareanu 1959, White 1969, Fuller 1971), which changes by
    // two for every passage of the rod through itself. Nothing here keeps a hose from that.
    const twist = 1.05 * critical;
    const shape = ring(twist);
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    expect(shape.energyNmm).toBeLessThan(ring(twist, { acceptSaddle: true }).energyNmm);
    expect(shape.twistRad + 2 * Math.PI * writheOf(shape)).toBeCloseTo(twist - 4 * Math.PI, 4);
  });
  test.each([-0.8, -0.3, 0.5, 0.9])('drawn out of its plane, wrung by %f: twist lost is writhe gained', (share) => {
    const shape = ring(share * critical, { pulls });
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    expect(Math.abs(writheOf(shape))).toBeGreaterThan(0.005);
    expect(shape.twistRad + 2 * Math.PI * writheOf(shape)).toBeCloseTo(share * critical, 5);
  });
});

describe('a helix that is wrung', () => {
  // Any helix is an equilibrium of a rod alike in all directions, with bending moment EI kappa along the binormal, any
  // twisting moment M, and a force along its axis of (M - EI tau) sqrt(kappa^2 + tau^2) (Love, art. 270).
  const radius = 120;
  const rise = 60;
  const perRad = Math.hypot(radius, rise);
  const angle = 2 * Math.PI * 0.4;
  const lengthMm = angle * perRad;
  const place = (a: number): Vec3 => [radius * Math.cos(a), radius * Math.sin(a), rise * a];
  const along = (a: number): Vec3 => scale([-radius * Math.sin(a), radius * Math.cos(a), rise] as Vec3, 1 / perRad);
  const inward = (a: number): Vec3 => [-Math.cos(a), -Math.sin(a), 0];
  const tau = rise / perRad ** 2;
  const shapeOf = (twistRad: number): RodShape => {
    const guess = new Float64Array(36);
    for (let i = 0; i < 12; i++) guess.set(place((angle * i) / 11), 3 * i);
    // A line on the hose that faces the axis all along has the twist tau L: a direction carried without twist falls
    // behind the principal normal by the torsion.
    const materialB = turnAbout(inward(angle), along(angle), twistRad - tau * lengthMm);
    return relaxRod({
      ...NO_WEIGHT,
      edges: 128,
      lengthMm,
      a: { kind: 'held', point: place(0), direction: along(0) },
      b: { kind: 'held', point: place(angle), direction: along(angle) },
      twist: { torsionalStiffnessNmm2: TORSIONAL_NMM2, materialA: inward(0), materialB, nearRad: twistRad },
      guess,
    });
  };

  test.each([-2, -0.7, 0, tau * lengthMm, 1.5, 3])(
    'twist %f: it stays as it is, and pulls as it should',
    (twistRad) => {
      const shape = shapeOf(twistRad);
      expect(shape.outcome).toBe('converged');
      for (const [k, point] of nodesOf(shape).entries()) {
        expect(distance(point, place((angle * k) / 128))).toBeLessThan(3e-4 * lengthMm);
      }
      expect(Math.abs(shape.twistRad - twistRad)).toBeLessThan(1e-3);
      const moment = (TORSIONAL_NMM2 * twistRad) / lengthMm;
      const pull = (moment - STIFFNESS_NMM2 * tau) / perRad;
      const unitN = STIFFNESS_NMM2 / lengthMm ** 2;
      expect(Math.abs(shape.endForceN[2] - pull)).toBeLessThan(0.03 * unitN);
      expect(Math.hypot(shape.endForceN[0], shape.endForceN[1])).toBeLessThan(0.03 * unitN);
      expect(shape.torqueNmm).toBeCloseTo((TORSIONAL_NMM2 * shape.twistRad) / lengthMm, 9);
    },
  );
});
