import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { spreadPoints } from '../../../../shared/solve/heat/spreadPoints.ts';

/** How far the share of points in boxes at the origin is from their volume, at most, over boxes thrown at random. */
function unevenness(points: readonly (readonly number[])[]): number {
  const random = seededRandom(9);
  let worst = 0;
  for (let trial = 0; trial < 300; trial++) {
    const box = points[0]!.map(() => random());
    const volume = box.reduce((a, b) => a * b, 1);
    const inside = points.filter((p) => p.every((x, j) => x < box[j]!)).length;
    worst = Math.max(worst, Math.abs(inside / points.length - volume));
  }
  return worst;
}

it.each([1, 2, 3, 4])(
  'fills %d dimensions more evenly than thrown points do, up to three by half and more',
  (dimensions) => {
    const random = seededRandom(4);
    const spread = spreadPoints(dimensions, 3);
    const out = new Float64Array(dimensions);
    const even = Array.from({ length: 2000 }, (_, i) => {
      spread(i, out);
      return [...out];
    });
    const thrown = even.map(() => Array.from({ length: dimensions }, random));
    expect(even.flat().every((x) => x >= 0 && x < 1)).toBe(true);
    expect(unevenness(even)).toBeLessThan(unevenness(thrown) * (dimensions < 4 ? 0.5 : 1));
  },
);

it('steps by the golden ratio in one dimension', () => {
  const spread = spreadPoints(1, 0);
  const [a, b] = [new Float64Array(1), new Float64Array(1)];
  spread(0, a);
  spread(1, b);
  expect((b[0]! - a[0]! + 1) % 1).toBeCloseTo((Math.sqrt(5) - 1) / 2, 12);
});

it('is the same for the same seed and another for another', () => {
  const first = (seed: number): number => {
    const out = new Float64Array(2);
    spreadPoints(2, seed)(5, out);
    return out[0]!;
  };
  expect(first(1)).toBe(first(1));
  expect(first(1)).not.toBe(first(2));
});
