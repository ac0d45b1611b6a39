import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { rejectFrom, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type RodShape, relaxRod } from '../../../../shared/solve/rod/index.ts';
import { type ShotRod, shootRod } from '../../../oracles/kirchhoffRod.ts';

/** Rods in space under any force, moment and weight, wrung, whose shape another method has found from one end. */

const LENGTH_MM = 400;
const STIFFNESS_NMM2 = 1.5e5;
const UNIT_N = STIFFNESS_NMM2 / LENGTH_MM ** 2;
const UNIT_NMM = STIFFNESS_NMM2 / LENGTH_MM;

function randomRod(seed: number): ShotRod {
  const random = seededRandom(seed);
  const three = (size: number): Vec3 => [
    size * (2 * random() - 1),
    size * (2 * random() - 1),
    size * (2 * random() - 1),
  ];
  return {
    lengthMm: LENGTH_MM,
    stiffnessNmm2: STIFFNESS_NMM2,
    torsionalStiffnessNmm2: STIFFNESS_NMM2 * (0.4 + 1.2 * random()),
    weightNPerMm: (3 * UNIT_N) / LENGTH_MM,
    down: unit(three(1)),
    forceN: three(8 * UNIT_N),
    momentNmm: three(3 * UNIT_NMM),
  };
}

function vectorAt(state: readonly number[], i: number): Vec3 {
  return [state[i]!, state[i + 1]!, state[i + 2]!];
}

/** Twist of the shot rod: its moment about its direction is the same all along, and GJ times its rate of twist. */
function knownTwist(rod: ShotRod): number {
  return (rod.momentNmm[0]! * rod.lengthMm) / rod.torsionalStiffnessNmm2;
}

function relaxed(rod: ShotRod, edges: number): { shape: RodShape; states: readonly (readonly number[])[] } {
  const states = shootRod(rod, edges);
  const last = states[edges]!;
  const direction = unit(vectorAt(last, 3));
  const shape = relaxRod({
    edges,
    lengthMm: rod.lengthMm,
    a: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
    b: { kind: 'held', point: vectorAt(last, 0), direction },
    stiffnessNmm2: rod.stiffnessNmm2,
    weightNPerMm: rod.weightNPerMm,
    down: rod.down as Vec3,
    twist: {
      torsionalStiffnessNmm2: rod.torsionalStiffnessNmm2,
      materialA: [0, 1, 0],
      materialB: unit(rejectFrom(vectorAt(last, 6), direction)),
      nearRad: knownTwist(rod),
    },
    guess: Float64Array.from(states.flatMap((s) => s.slice(0, 3))),
    // The one from the other end may balance where a rod would not stay.
    acceptSaddle: true,
  });
  return { shape, states };
}

function errorMm(shape: RodShape, states: readonly (readonly number[])[]): number {
  return Math.max(...states.map((s, k) => Math.hypot(...[0, 1, 2].map((i) => shape.nodes[3 * k + i]! - s[i]!))));
}

describe.each([1, 2, 3, 4, 5, 6, 7, 8])('seed %i', (seed) => {
  const rod = randomRod(seed);
  const { shape, states } = relaxed(rod, 128);

  test('the shape is the one shot from A, within 0.1 % of its length', () => {
    expect(shape.outcome).toBe('converged');
    expect(errorMm(shape, states)).toBeLessThan(1e-3 * LENGTH_MM);
  });
  test('so are twist and torque', () => {
    expect(Math.abs(shape.twistRad - knownTwist(rod))).toBeLessThan(5e-3);
    expect(Math.abs(shape.torqueNmm - rod.momentNmm[0]!)).toBeLessThan(5e-3 * UNIT_NMM);
  });
  test('so is the force at B', () => {
    for (let i = 0; i < 3; i++) {
      expect(Math.abs(shape.endForceN[i]! - states[128]![12 + i]!)).toBeLessThan(0.05 * UNIT_N);
    }
  });
  test('the error falls about four times with twice the edges', () => {
    const coarse = relaxed(rod, 64);
    const ratio = errorMm(coarse.shape, coarse.states) / errorMm(shape, states);
    expect(ratio).toBeGreaterThan(3.2);
    expect(ratio).toBeLessThan(4.8);
  });
});
