import { describe, expect, test } from 'vitest';
import { degreesToRadians, radiansToDegrees } from '../../../../shared/base/units.ts';
import { rejectFrom, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { splineThrough } from '../../../../shared/geometry/cubicCurve.ts';
import { clockBetween } from '../../../../shared/solve/ends/clock.ts';
import { materialsOfClock, type RodProblem, relaxRod } from '../../../../shared/solve/rod/index.ts';

const A = unit([1, 0.3, 0.4] as Vec3);
const B = unit([0.8, -0.5, 0.2] as Vec3);
const UP_A = unit([0.2, 0.1, 1] as Vec3);
const UP_B = unit([-0.3, 0.9, 0.4] as Vec3);

const FREE: RodProblem = {
  edges: 128,
  lengthMm: 460,
  a: { kind: 'held', point: [10, -20, 30], direction: A },
  b: { kind: 'held', point: [390, 60, -40], direction: B },
  stiffnessNmm2: 1.5e5,
  weightNPerMm: 0.004,
  down: [0, 0, -1],
  guess: new Float64Array([10, -20, 30, 390, 60, -40]),
};

describe('a straight hose along x', () => {
  test('near outlet up, far outlet left as looked along it: 12 to 9 o’clock is 90 counter-clockwise, and no twist', () => {
    // Looking along +x with z up, left is +y. The line that leaves A upwards arrives upwards.
    const { materialA, materialB } = materialsOfClock([0, 0, 1], [0, 1, 0], [1, 0, 0], [1, 0, 0], 90);
    expect(materialA).toEqual([0, 0, 1]);
    for (const [i, c] of [0, 0, 1].entries()) expect(materialB[i]).toBeCloseTo(c, 12);
  });
});

describe('a hose in the bay', () => {
  const free = relaxRod(FREE);
  const curve = splineThrough(free.nodes, FREE.lengthMm / FREE.edges, A, B);
  const wanted = clockBetween(curve, unit(rejectFrom(UP_A, A)), unit(rejectFrom(UP_B, B)));
  const made = (offDeg: number, torsionalStiffnessNmm2: number): number => {
    const materials = materialsOfClock(UP_A, UP_B, A, B, wanted + offDeg);
    const nearRad = degreesToRadians(offDeg);
    const twist = { torsionalStiffnessNmm2, ...materials, nearRad };
    return radiansToDegrees(relaxRod({ ...FREE, guess: free.nodes, twist }).twistRad);
  };
  test('made with the clock it wants, it is not twisted, but for what the edges differ from the curve', () => {
    expect(Math.abs(made(0, 0))).toBeLessThan(0.01);
  });
  test.each([-90, -20, 35, 170])(
    'made %f degrees off, it is twisted by that much as long as it keeps its shape',
    (off) => {
      expect(Math.abs(made(off, 0) - off)).toBeLessThan(0.01);
    },
  );
  test('and by less when it gives way', () => {
    expect(made(35, 1e5)).toBeGreaterThan(20);
    expect(made(35, 1e5)).toBeLessThan(34.9);
  });
});
