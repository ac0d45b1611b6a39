import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, distance, dot, type Vec3 } from '../../../../shared/base/vec3.ts';
import { withinSlab } from '../../../../shared/solve/search/slab.ts';
import { anyDirection } from '../../../arbitraries/posePairs.ts';
import { analyticField } from './analyticField.ts';

const BOUNDS = { min: [-200, -200, -200] as Vec3, max: [200, 200, 200] as Vec3 };
/** A ball of 30 mm at the middle, of which the centreline keeps 10 mm: margin = distance to the middle less 40. */
const BALL = analyticField([{ kind: 'ball', centre: [0, 0, 0], radius: 30 }], 10, BOUNDS);
const FAR = 1e6;

function places(seed: number, count: number): Vec3[] {
  const random = seededRandom(seed);
  const within = (): number => 300 * (random() - 0.5);
  return Array.from({ length: count }, () => [within(), within(), within()] as const);
}

describe('withinSlab', () => {
  it.each([1, 2, 3])('has the lesser of the field and the distance to the nearer plane as its margin, %d', (seed) => {
    const normal = anyDirection(seededRandom(seed));
    const slab = withinSlab(BALL, { point: [10, 20, -5], normal, halfMm: 25 });
    for (const p of places(seed, 500)) {
      // The nearer of two planes, each by its own point and outward normal, whatever side the place is on.
      const inwards = [1, -1].map((side) => {
        const onPlane = addScaled([10, 20, -5], normal, 25 * side);
        return side * (dot(onPlane, normal) - dot(p, normal));
      });
      const expected = Math.min(...inwards, distance(p, [0, 0, 0]) - 40);
      expect(slab.marginMm(...p, FAR)).toBeCloseTo(expected, 9);
      expect(slab.coarseMarginMm(...p)).toBeLessThanOrEqual(expected + 1e-9);
      expect(slab.mostMarginMm(...p)).toBeGreaterThanOrEqual(expected - 1e-9);
    }
  });

  it('answers the exact margin below what is asked up to, and never less than that beyond', () => {
    const slab = withinSlab(BALL, { point: [0, 0, 0], normal: [0, 0, 1], halfMm: 60 });
    for (const p of places(4, 500)) {
      const exact = slab.marginMm(...p, FAR);
      for (const upTo of [-20, 0, 5, 30]) {
        const told = slab.marginMm(...p, upTo);
        if (exact < upTo) expect(told).toBeCloseTo(exact, 9);
        else expect(told).toBeGreaterThanOrEqual(Math.min(upTo, exact) - 1e-9);
      }
    }
  });

  it('changes no faster than its Lipschitz bound says', () => {
    const slab = withinSlab(BALL, { point: [0, 5, 0], normal: [0.6, 0, 0.8], halfMm: 15 });
    const all = places(5, 200);
    for (const [i, p] of all.entries()) {
      const q = all[(i * 7 + 1) % all.length]!;
      const change = Math.abs(slab.marginMm(...p, FAR) - slab.marginMm(...q, FAR));
      expect(change).toBeLessThanOrEqual(slab.lipschitz * distance(p, q) + 1e-9);
    }
  });

  it('leaves nothing of a field without room in it', () => {
    const slab = withinSlab(BALL, { point: [0, 0, 0], normal: [1, 0, 0], halfMm: 0 });
    for (const p of places(6, 100)) expect(slab.marginMm(...p, FAR)).toBeLessThanOrEqual(0);
  });
});
