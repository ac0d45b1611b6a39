import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { type DistanceBounds, KeptDistances } from '../../../../shared/solve/bay/keptDistances.ts';

const BOX = { min: [0, 0, 0] as Vec3, max: [200, 150, 100] as Vec3 };
const CENTRE: Vec3 = [90, 70, 40];
const RADIUS_MM = 25;

/** A ball: distance to its surface, negative inside, told only up to what is asked. */
function ball(x: number, y: number, z: number, upToMm: number): number {
  const mm = Math.hypot(x - CENTRE[0], y - CENTRE[1], z - CENTRE[2]) - RADIUS_MM;
  return mm < upToMm ? mm : Number.POSITIVE_INFINITY;
}

function places(seed: number, count: number): Vec3[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => [random() * 300 - 50, random() * 250 - 50, random() * 200 - 50]);
}

describe('keptDistances', () => {
  it('bounds the true distance from both sides, inside the thing, far from it and outside the box', () => {
    const kept = new KeptDistances(BOX, ball);
    const about: DistanceBounds = { leastMm: 0, mostMm: 0 };
    for (const [x, y, z] of places(3, 4000)) {
      const mm = ball(x, y, z, Number.POSITIVE_INFINITY);
      kept.bound(x, y, z, about);
      expect(about.leastMm).toBeLessThanOrEqual(mm);
      expect(about.mostMm).toBeGreaterThanOrEqual(mm);
    }
  });

  it('is no looser near the thing than a cell is wide', () => {
    const kept = new KeptDistances(BOX, ball);
    const about: DistanceBounds = { leastMm: 0, mostMm: 0 };
    for (const [x, y, z] of places(5, 2000)) {
      const isInside = x > 0 && x < 200 && y > 0 && y < 150 && z > 0 && z < 100;
      const mm = ball(x, y, z, Number.POSITIVE_INFINITY);
      if (!isInside || mm > 40) continue;
      kept.bound(x, y, z, about);
      expect(about.mostMm - about.leastMm).toBeLessThan(10 * Math.sqrt(3) + 0.01);
    }
  });

  it('answers the same whatever was asked before, and asks each cell and each block of cells once', () => {
    let asked = 0;
    const counting = (x: number, y: number, z: number, upToMm: number): number => {
      asked++;
      return ball(x, y, z, upToMm);
    };
    const all = places(7, 500);
    const answers = (order: readonly Vec3[]): Map<string, DistanceBounds> => {
      const kept = new KeptDistances(BOX, counting);
      return new Map(
        order.map(([x, y, z]) => {
          const about: DistanceBounds = { leastMm: 0, mostMm: 0 };
          kept.bound(x, y, z, about);
          return [`${x} ${y} ${z}`, about];
        }),
      );
    };
    const forwards = answers(all);
    const once = asked;
    expect(answers([...all].reverse())).toEqual(forwards);
    answers([...all, ...all]);
    expect(asked).toBe(3 * once);
  });

  it('bounds places of a large bay, most of them out of reach, as tightly as 60 mm and their cell allow', () => {
    const kept = new KeptDistances({ min: [0, 0, 0], max: [900, 700, 500] }, ball);
    const about: DistanceBounds = { leastMm: 0, mostMm: 0 };
    const random = seededRandom(9);
    let far = 0;
    for (let i = 0; i < 6000; i++) {
      const [x, y, z]: Vec3 = [random() * 900, random() * 700, random() * 500];
      const mm = ball(x, y, z, Number.POSITIVE_INFINITY);
      kept.bound(x, y, z, about);
      expect(about.leastMm).toBeLessThanOrEqual(mm);
      expect(about.mostMm).toBeGreaterThanOrEqual(mm);
      // From the middle of its cell, half a diagonal of 10 mm away at most, up to 60 mm are told, and half a diagonal is given away.
      expect(about.leastMm).toBeGreaterThanOrEqual(Math.min(60, mm - 8.67) - 8.67);
      if (mm > 200) far++;
    }
    expect(far).toBeGreaterThan(3000);
  });

  it('keeps a distance of nothing', () => {
    let asked = 0;
    const touching = new KeptDistances(BOX, () => {
      asked++;
      return 0;
    });
    const about: DistanceBounds = { leastMm: 0, mostMm: 0 };
    touching.bound(5, 5, 5, about);
    const once = asked;
    for (let i = 0; i < 3; i++) touching.bound(5, 5, 5, about);
    expect(asked).toBe(once);
    expect(about.leastMm).toBeCloseTo(0, 3);
  });
});
