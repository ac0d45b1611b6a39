import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { degreesApart, degreesToRadians } from '../../../../shared/base/units.ts';
import { turnAbout, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type BentRod, straighten } from '../../../../shared/solve/straighten/straighten.ts';
import { scattered, TWO_ELBOW_LENGTH_MM, twoElbowPoints } from '../../../oracles/twoElbowRod.ts';

const ROD: BentRod = {
  points: twoElbowPoints(52),
  outletA: [0, 0, 1],
  outletB: [1, 0, 0],
  cutOffMm: { a: 0, b: 0 },
  toleranceDeg: () => 3,
};

function straightened(changes: Partial<BentRod> = {}) {
  const result = straighten({ ...ROD, ...changes });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

function clockOf(changes: Partial<BentRod> = {}): number {
  const { clock } = straightened(changes);
  return clock.kind === 'angle' ? clock.deg : Number.NaN;
}

describe('the two-elbow rod (closed form: 200 + 100 pi = 514.159 mm, 270 degrees)', () => {
  it('is straightened to its length and its clock', () => {
    const rod = straightened();
    expect(Math.abs(rod.pathLengthMm - TWO_ELBOW_LENGTH_MM)).toBeLessThan(0.05);
    expect(Math.abs(rod.pathLengthMm - TWO_ELBOW_LENGTH_MM)).toBeLessThanOrEqual(rod.lengthErrorMm);
    expect(degreesApart(clockOf(), 270)).toBeLessThan(0.001);
    expect(rod.tightest.radiusMm).toBeGreaterThan(97);
    expect(rod.tightest.radiusMm).toBeLessThan(103);
    expect(rod.notes).toEqual([]);
  });

  it.each([
    [30, 240],
    [60, 210],
    [150, 120],
  ])('outlet B turned %d degrees from +X toward +Y: %d', (turned, expected) => {
    const outletB = turnAbout([1, 0, 0], [0, 0, 1], degreesToRadians(turned));
    expect(degreesApart(clockOf({ outletB }), expected)).toBeLessThan(0.01);
  });

  it('less 47 mm for each end leaves 420.159 mm', () => {
    expect(straightened({ cutOffMm: { a: 47, b: 47 } }).cutLengthMm).toBeCloseTo(TWO_ELBOW_LENGTH_MM - 94, 1);
  });

  it('reads the same from the other end, and in a mirror 360 less', () => {
    const points = [...ROD.points].reverse();
    expect(degreesApart(clockOf({ points, outletA: [1, 0, 0], outletB: [0, 0, 1] }), 270)).toBeLessThan(0.001);
    const mirrored = ROD.points.map((p): Vec3 => [p[0], -p[1], p[2]]);
    expect(degreesApart(clockOf({ points: mirrored }), 90)).toBeLessThan(0.001);
  });

  it('does not care where it stands, nor how long the outlets are given', () => {
    const axis = unit([0.4, 1, -0.7]);
    const turned = (p: Vec3): Vec3 => turnAbout(p, axis, 2.2);
    const points = ROD.points.map((p): Vec3 => {
      const t = turned(p);
      return [t[0] - 4000, t[1] + 12, t[2] + 900];
    });
    const outlets = { outletA: turned([0, 0, 7]), outletB: turned([0.2, 0, 0]) };
    expect(degreesApart(clockOf({ points, ...outlets }), clockOf())).toBeLessThan(1e-6);
    expect(straightened({ points, ...outlets }).pathLengthMm).toBeCloseTo(straightened().pathLengthMm, 6);
  });
});

it('says how far off it may be, and the truth lies within that nineteen times in twenty', () => {
  let within = 0;
  const seeds = 60;
  for (let seed = 1; seed <= seeds; seed++) {
    const points = scattered(ROD.points, 0.6, seededRandom(seed));
    const rod = straightened({ points });
    const lengthHolds = Math.abs(rod.pathLengthMm - TWO_ELBOW_LENGTH_MM) <= rod.lengthErrorMm;
    const clockHolds = degreesApart(clockOf({ points }), 270) <= (rod.clockErrorDeg ?? 0);
    if (lengthHolds) within++;
    if (clockHolds) within++;
    expect(rod.lengthErrorMm).toBeLessThan(6);
  }
  // 95 % of 120 is 114; binomial, one in a thousand falls under 106.
  expect(within).toBeGreaterThanOrEqual(106);
});

it('a straight end leaves the clock free', () => {
  const { outletA: _a, ...withoutA } = ROD;
  const rod = straighten(withoutA);
  expect(rod.ok && rod.value.clock).toEqual({ kind: 'free', reason: 'a-straight' });
});

it('refuses an outlet along the hose, and ends that leave no hose', () => {
  const problems = (changes: Partial<BentRod>) => {
    const result = straighten({ ...ROD, ...changes });
    return result.ok ? [] : result.problems.map((p) => p.path);
  };
  expect(problems({ outletA: [-1, 0.1, 0] })).toEqual(['outlet A']);
  expect(problems({ outletA: [1, 0, 0], outletB: [0, 0, 1] })).toEqual(['outlet A', 'outlet B']);
  expect(problems({ outletA: turnAbout([1, 0, 0], [0, 0, 1], degreesToRadians(11)) })).toEqual([]);
  expect(problems({ cutOffMm: { a: 300, b: 215 } })).toEqual(['cut-off']);
});

it('says which points are out of order and where there are none', () => {
  const points = [...ROD.points];
  [points[20], points[21]] = [points[21] as Vec3, points[20] as Vec3];
  const notes = straightened({ points }).notes;
  expect(notes.some((note) => note.includes('point 21'))).toBe(true);
  const gapped = ROD.points.filter((_, i) => i < 10 || i > 16);
  expect(straightened({ points: gapped }).notes).toEqual([expect.stringContaining('Points 10 and 11 are')]);
});
