import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, anySquareTo, cross, dot, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { tightestBetween } from '../../../../shared/solve/character/bendsBetween.ts';
import { planeApartRad, planeThrough } from '../../../../shared/solve/character/planeThrough.ts';

describe('planeThrough', () => {
  it('finds the plane that seeded points were put in, and how far one was moved off it', () => {
    const random = seededRandom(3);
    for (let n = 0; n < 100; n++) {
      const normal = unit([random() - 0.5, random() - 0.5, random() - 0.5]);
      const u = anySquareTo(normal);
      const v = cross(normal, u);
      const place = (): Vec3 => addScaled(addScaled([500, -200, 90], u, 400 * random()), v, 300 * random());
      const points = Array.from({ length: 60 }, place);
      const flat = planeThrough(points);
      expect(flat.offMm).toBeLessThan(1e-9);
      expect(Math.abs(dot(flat.normal, normal))).toBeGreaterThan(1 - 1e-9);
      // Pairs to both sides: the plane stays where it is, both members of a pair are 4 mm off it.
      const pairs = points.flatMap((p) => [addScaled(p, normal, 4), addScaled(p, normal, -4)]);
      expect(planeThrough(pairs).offMm).toBeCloseTo(4, 6);
    }
  });

  it('calls a straight row flat', () => {
    expect(
      planeThrough([
        [0, 0, 0],
        [10, 20, 30],
        [20, 40, 60],
      ]).offMm,
    ).toBeLessThan(1e-9);
  });
});

describe('planeApartRad', () => {
  const row = (start: Vec3, end: Vec3): Vec3[] => [[0, 0, 0], start, [300 - end[0], -end[1], -end[2]], [300, 0, 0]];

  it.each([
    ['both up from the line: one plane', [1, 0, 1], [1, 0, -1], 0],
    ['one up, one down: an S in one plane', [1, 0, 1], [1, 0, 1], 0],
    ['one up, one to the side', [1, 0, 1], [1, 1, 0], 90],
    ['30 degrees apart', [1, 0, 1], [1, -0.5, -Math.sqrt(0.75)], 30],
  ] as const)('%s', (_, start, end, deg) => {
    expect(((planeApartRad(row(start, end)) ?? Number.NaN) * 180) / Math.PI).toBeCloseTo(deg, 6);
  });

  it('has no plane to tell where an end points along the line', () => {
    expect(planeApartRad(row([1, 0, 0.01], [1, 1, 0]))).toBeUndefined();
  });
});

describe('tightestBetween', () => {
  const circle = Array.from({ length: 61 }, (_, i): Vec3 => [80 * Math.cos(i / 20), 80 * Math.sin(i / 20), 0]);
  const lengths = circle.map((_, i) => 4 * i);

  it('reads the radius of a circle, and nothing from a straight row', () => {
    expect(tightestBetween(circle, lengths, 0, 240).radiusMm).toBeCloseTo(80, 9);
    const straight = circle.map((_, i): Vec3 => [4 * i, 0, 0]);
    expect(tightestBetween(straight, lengths, 0, 240).radiusMm).toBe(Number.POSITIVE_INFINITY);
  });

  it('looks only between the two lengths', () => {
    const kinked = circle.map((p, i): Vec3 => (i === 30 ? [p[0] * 1.05, p[1] * 1.05, 0] : p));
    expect(tightestBetween(kinked, lengths, 0, 240).arcLengthMm).toBe(120);
    expect(tightestBetween(kinked, lengths, 0, 112).radiusMm).toBeCloseTo(80, 9);
  });
});
