import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { clearSpace } from '../../../../shared/solve/search/clearSpace.ts';
import { GoalDistance, gridOver, newCellStates } from '../../../../shared/solve/search/goalDistance.ts';
import type { ClearanceField } from '../../../../shared/solve/search/problem.ts';
import { analyticField } from './analyticField.ts';

const BOUNDS = { min: [0, 0, 0] as Vec3, max: [240, 200, 160] as Vec3 };
const CELL_MM = 20;
const HALF_DIAGONAL_MM = (CELL_MM * Math.sqrt(3)) / 2;

/** Balls, and a wall with a hole or without one. */
function field(seed: number, isShut: boolean): ClearanceField {
  const random = seededRandom(seed);
  const balls = Array.from({ length: 8 }, () => {
    const centre: Vec3 = [random() * 240, random() * 200, random() * 160];
    return { kind: 'ball', centre, radius: 8 + 14 * random() } as const;
  });
  const holes = isShut ? [] : [{ y: 60 + 80 * random(), z: 50 + 60 * random(), radius: 40 }];
  return analyticField([...balls, { kind: 'wall', x: 120, holes }], isShut ? 40 : 12, BOUNDS);
}

/**
 * The distance to the nearest goal from each cell, mm, by relaxing every edge until nothing changes: written down anew, with the field's
 * exact margin at the middle of each cell. A step is 3, 4 or 5 thirds of a cell, three times as much into a cell whose middle is blocked.
 */
function relaxed(of: ClearanceField, goals: readonly number[]): number[] {
  const [nx, ny, nz] = [12, 10, 8];
  const cells = Array.from({ length: nx * ny * nz }, (_, cell) => {
    const steps: Vec3 = [cell % nx, Math.floor(cell / nx) % ny, Math.floor(cell / (nx * ny))];
    const [x, y, z] = steps.map((n) => (n + 0.5) * CELL_MM) as [number, number, number];
    const margin = of.marginMm(x, y, z, 1e6);
    const times = margin >= 0 ? 1 : margin >= -HALF_DIAGONAL_MM ? 3 : Number.POSITIVE_INFINITY;
    return { steps, times, isBlocked: times === Number.POSITIVE_INFINITY };
  });
  const thirds = cells.map((_, cell) => (goals.includes(cell) ? 0 : Number.POSITIVE_INFINITY));
  for (let changed = true; changed; ) {
    changed = false;
    for (const [p, one] of cells.entries())
      for (const [q, other] of cells.entries()) {
        const apart = one.steps.map((n, k) => Math.abs(n - (other.steps[k] as number)));
        if (Math.max(...apart) !== 1 || other.isBlocked) continue;
        const whole = (thirds[p] as number) + other.times * (2 + apart.reduce((sum, n) => sum + n, 0));
        if (whole >= (thirds[q] as number)) continue;
        thirds[q] = whole;
        changed = true;
      }
  }
  return thirds.map((n) => (n * CELL_MM) / 3);
}

function middleOf(cell: number): Vec3 {
  return [((cell % 12) + 0.5) * 20, ((Math.floor(cell / 12) % 10) + 0.5) * 20, (Math.floor(cell / 120) + 0.5) * 20];
}

describe('GoalDistance', () => {
  it.each([
    [1, false],
    [2, false],
    [3, true],
  ])(
    'tells the same distances whatever is asked for first, towards it or all round: bay %d, shut: %s',
    (seed, isShut) => {
      const of = field(seed, isShut);
      const goals = [13, 14, 250].filter((cell) => of.marginMm(...middleOf(cell), 1e6) > 0);
      const expected = relaxed(of, goals);
      expect(expected.some(Number.isFinite)).toBe(true);
      expect(expected.includes(Number.POSITIVE_INFINITY)).toBe(true);
      const space = clearSpace({ field: of });
      const grid = gridOver(BOUNDS, CELL_MM);
      const random = seededRandom(seed);
      for (const allRound of [false, true])
        for (let round = 0; round < 4; round++) {
          const guide = new GoalDistance(space, grid, newCellStates(grid), goals.map(middleOf), { allRound });
          for (let n = 0; n < 300; n++) {
            const cell = Math.floor(random() * expected.length);
            const exact = expected[cell] as number;
            expect(guide.leastAt(...middleOf(cell)), `least of cell ${cell}`).toBeLessThanOrEqual(exact + 1e-6);
            expect(guide.at(...middleOf(cell)), `cell ${cell}`).toBeCloseTo(exact, 6);
            expect(guide.leastAt(...middleOf(cell))).toBe(guide.at(...middleOf(cell)));
          }
        }
    },
  );

  it('looks into far fewer cells on the way to a place than all round', () => {
    const space = clearSpace({ field: analyticField([], 0, { min: [0, 0, 0], max: [1200, 1200, 1200] }) });
    const grid = gridOver(space.field.bounds, CELL_MM);
    const lookedInto = (allRound: boolean): number => {
      const states = newCellStates(grid);
      new GoalDistance(space, grid, states, [[310, 610, 610]], { allRound }).at(890, 610, 610);
      return states.filter((state) => state !== 0).length;
    };
    expect(lookedInto(false)).toBeLessThan(lookedInto(true) / 4);
  });
});
