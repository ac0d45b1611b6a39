import { expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../shared/base/vec3.ts';
import { inverseMotion, moveAll, movePoint, rigidMotion, turnDirection } from '../../../shared/geometry/rigidMotion.ts';

it('turns by roll, then pitch, then yaw, about the axes of the bay through the pivot, then shifts', () => {
  const quarter = Math.PI / 2;
  const pivot: Vec3 = [10, 20, 30];
  const motion = rigidMotion(pivot, quarter, quarter, 0, [0, 0, 5]);
  // Roll takes +Y to +Z; pitch about +Y takes +Z to +X.
  const [x, y, z] = movePoint(motion, [10, 21, 30]);
  expect([x, y, z].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([11, 20, 35]);
  const yawed = turnDirection(rigidMotion(pivot, 0, 0, quarter, [0, 0, 0]), [1, 0, 0]);
  expect(yawed[1]).toBeCloseTo(1, 12);
  expect(distance(movePoint(rigidMotion(pivot, 0.3, -0.2, 0.7, [0, 0, 0]), pivot), pivot)).toBeLessThan(1e-12);
});

it('is undone by its inverse', () => {
  const motion = rigidMotion([100, -40, 7], 0.3, -0.5, 1.1, [4, 5, -6]);
  const p: Vec3 = [123, -456, 78];
  expect(distance(movePoint(inverseMotion(motion), movePoint(motion, p)), p)).toBeLessThan(1e-9);
});

it('moves places one after the other as one by one, and keeps their distances', () => {
  const motion = rigidMotion([100, -40, 7], -0.4, 0.2, 0.9, [1, 2, 3]);
  const [p, q]: [Vec3, Vec3] = [
    [1, 2, 3],
    [-40, 50, 6],
  ];
  const moved = moveAll(motion, Float64Array.from([...p, ...q]));
  expect([...moved]).toEqual([...movePoint(motion, p), ...movePoint(motion, q)]);
  expect(distance(movePoint(motion, p), movePoint(motion, q))).toBeCloseTo(distance(p, q), 12);
});
