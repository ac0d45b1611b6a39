import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { add, distance, lerp, scale, turnAbout, type Vec3 } from '../../../shared/base/vec3.ts';
import { nearestPass } from '../../../shared/geometry/nearestPass.ts';

function lengthsAlong(points: readonly Vec3[]): number[] {
  let sum = 0;
  return points.map((p, i) => {
    sum += i === 0 ? 0 : distance(p, points[i - 1] as Vec3);
    return sum;
  });
}

const passOf = (points: readonly Vec3[], apart: number) => nearestPass(points, lengthsAlong(points), apart);

describe('a line against itself, by hand', () => {
  it('parallel legs: the gap between them', () => {
    const hairpin: Vec3[] = [
      [0, 0, 0],
      [100, 0, 0],
      [100, 30, 0],
      [0, 30, 0],
    ];
    expect(passOf(hairpin, 20)?.distance).toBeCloseTo(30, 12);
    // the two legs are 30 apart along the line, so at 31 nothing is left to compare
    expect(passOf(hairpin, 31)).toBeUndefined();
  });

  it('legs that pass over each other: the height between, at the middles of both', () => {
    const loop: Vec3[] = [
      [-50, 0, 0],
      [50, 0, 0],
      [50, 80, 0],
      [0, 50, 7],
      [0, -50, 7],
    ];
    const pass = passOf(loop, 60);
    expect(pass?.distance).toBeCloseTo(7, 12);
    expect(pass?.here).toMatchObject({ along: 50, point: [0, 0, 0] });
    expect(pass?.there.point).toEqual([0, 0, 7]);
  });

  it('a coil: the chord between two turns, least over how far apart they are', () => {
    // p(a) = (R cos a, R sin a, pitch a / 2 pi): two places d apart in angle are sqrt((2 R sin d/2)^2 + (pitch d / 2 pi)^2) apart
    const [radius, pitch] = [100, 20];
    const chord = (d: number): number => Math.hypot(2 * radius * Math.sin(d / 2), (pitch * d) / (2 * Math.PI));
    const fine = Array.from({ length: 20001 }, (_, i) => chord(Math.PI + (i * Math.PI) / 10000));
    const coil = Array.from({ length: 1441 }, (_, i): Vec3 => {
      const a = (i * Math.PI) / 360;
      return [radius * Math.cos(a), radius * Math.sin(a), (pitch * a) / (2 * Math.PI)];
    });
    // points every half degree: chords lie at most s^2 / 8R = 0.001 mm inside the arc
    expect(passOf(coil, Math.PI * radius)?.distance).toBeCloseTo(Math.min(...fine), 2);
  });

  it('a line too short to pass itself, and a line that is one point, have no pass', () => {
    const straight: Vec3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [20, 0, 0],
    ];
    expect(passOf(straight, 30)).toBeUndefined();
    expect(
      passOf(
        [
          [0, 0, 0],
          [0, 0, 0],
        ],
        0,
      ),
    ).toBeUndefined();
  });
});

const SEEDS = Array.from({ length: 30 }, (_, i) => i + 1);
const STEPS = 20;

/** A wandering line with legs of uneven length. */
function wandering(seed: number): Vec3[] {
  const random = seededRandom(seed);
  const points: Vec3[] = [[0, 0, 0]];
  while (points.length < 30) {
    const step: Vec3 = [random() - 0.5, random() - 0.5, random() - 0.5];
    points.push(add(points.at(-1) as Vec3, scale(step, 5 + 40 * random())));
  }
  return points;
}

/** Every pair of legs, each at a grid of places. */
function slowTwin(points: readonly Vec3[], apart: number): number {
  const along = lengthsAlong(points);
  const onLeg = (i: number): Vec3[] =>
    Array.from({ length: STEPS + 1 }, (_, k) => lerp(points[i] as Vec3, points[i + 1] as Vec3, k / STEPS));
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < points.length - 1; i++)
    for (let j = i + 1; j < points.length - 1; j++)
      if ((along[j] as number) - (along[i + 1] as number) >= apart)
        for (const p of onLeg(i)) for (const q of onLeg(j)) least = Math.min(least, distance(p, q));
  return least;
}

describe.each(SEEDS)('a wandering line, seed %i', (seed) => {
  const points = wandering(seed);
  const longest = Math.max(...points.slice(1).map((p, i) => distance(p, points[i] as Vec3)));
  const found = passOf(points, 40);

  it('is as near to itself as its slow twin says', () => {
    const slow = slowTwin(points, 40);
    const distanceFound = found?.distance ?? Number.NaN;
    expect(distanceFound).toBeLessThanOrEqual(slow + 1e-9);
    // each leg is looked at every 1/20: off by half of that on both
    expect(distanceFound).toBeGreaterThanOrEqual(slow - longest / STEPS - 1e-9);
    if (found !== undefined) expect(distance(found.here.point, found.there.point)).toBeCloseTo(distanceFound, 9);
  });

  it('keeps its answer moved, turned, scaled and reversed', () => {
    const moved = points.map((p) => add(turnAbout(p, [0.6, 0, 0.8], 1.1), [300, -40, 7]));
    expect(passOf(moved, 40)?.distance).toBeCloseTo(found?.distance as number, 9);
    expect(passOf([...points].reverse(), 40)?.distance).toBeCloseTo(found?.distance as number, 9);
    expect(
      passOf(
        points.map((p) => scale(p, 3)),
        120,
      )?.distance,
    ).toBeCloseTo(3 * (found?.distance as number), 8);
  });
});
