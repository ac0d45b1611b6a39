import { describe, expect, test } from 'vitest';
import { type RandomSource, seededRandom } from '../../../../shared/base/random.ts';
import { SWEEP_WITHIN_MM } from '../../../../shared/base/tolerances.ts';
import { add, addScaled, scale, sub, turnAbout, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import type { Sweep } from '../../../../shared/geometry/sweep/sweep.ts';
import { withSweeps } from '../../../../shared/geometry/sweep/withSweeps.ts';
import type { TriMesh } from '../../../../shared/geometry/triMesh.ts';
import { bruteForceDistance } from '../../../oracles/bruteForceDistance.ts';
import { randomPoint, soupOf } from '../../../oracles/randomMesh.ts';

type Turn = Extract<Sweep, { kind: 'turn' }>;

/** The place, taken back to where the part then is as scanned. */
function takenBack(sweep: Sweep, p: Vec3, share: number): Vec3 {
  if (sweep.kind === 'stroke')
    return addScaled(p, unit(sweep.direction), -(sweep.fromMm + share * (sweep.toMm - sweep.fromMm)));
  const rad = sweep.fromRad + share * (sweep.toRad - sweep.fromRad);
  return add(sweep.point, turnAbout(sub(p, sweep.point), unit(sweep.axis), -rad));
}

/** Slow twin: the part in so many poses, each measured. No less than the truth, by at most half a pose's way. */
function distanceInPoses(mesh: TriMesh, sweep: Sweep, p: Vec3, poses: number): number {
  let least = Infinity;
  for (let k = 0; k <= poses; k++) least = Math.min(least, bruteForceDistance(mesh, takenBack(sweep, p, k / poses)));
  return least;
}

/** Few large triangles and small ones about a place; one faces the origin's axis so that its middle comes nearest to it. */
function part(random: RandomSource, centre: Vec3): TriMesh {
  const around = (sizeMm: number): Vec3 => add(centre, randomPoint(random, sizeMm));
  return soupOf([
    ...[around(90), around(90), around(90)],
    ...[around(8), around(8), around(8)],
    ...[
      [centre[0], -50, -20],
      [centre[0], 50, -20],
      [centre[0], 0, 60],
    ].map((v) => v as unknown as Vec3),
  ]);
}

const POSES = 2500;
const SOME_TURN: Turn = { kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromRad: -0.3, toRad: 0.9 };

function eachPlace(
  seed: number,
  mesh: TriMesh,
  sweep: Sweep,
  check: (swept: number, slow: number) => void,
  sizeMm = 320,
): number {
  const random = seededRandom(seed);
  const swept = withSweeps(mesh, () => sweep);
  let outside = 0;
  for (let n = 0; n < 60; n++) {
    const p = randomPoint(random, sizeMm);
    const slow = distanceInPoses(mesh, sweep, p, POSES);
    // Within the volume there is no surface to measure to; meshes here have no inside.
    if (slow < 1) continue;
    outside++;
    check(bruteForceDistance(swept, p), slow);
  }
  return outside;
}

/** mm. What the slow twin may be over by: half of what the farthest place moves between its poses. */
const slowOver = (wayMm: number): number => wayMm / POSES / 2;

describe('what a part sweeps', () => {
  test.each([1, 2, 3])('in a stroke is exact (seed %i)', (seed) => {
    const mesh = part(seededRandom(seed), [70, 0, 0]);
    const stroke: Sweep = { kind: 'stroke', direction: [1, 2, -0.5], fromMm: -12, toMm: 60 };
    const outside = eachPlace(seed + 10, mesh, stroke, (swept, slow) => {
      expect(swept).toBeLessThanOrEqual(slow + 1e-4);
      expect(swept).toBeGreaterThanOrEqual(slow - slowOver(72) - 1e-4);
    });
    expect(outside).toBeGreaterThan(30);
  });

  test.each([1, 2, 3])('in a part of a turn is within the tolerance (seed %i)', (seed) => {
    const mesh = part(seededRandom(seed), [70, 0, 0]);
    const outside = eachPlace(seed + 20, mesh, SOME_TURN, (swept, slow) => {
      expect(swept).toBeLessThanOrEqual(slow + SWEEP_WITHIN_MM);
      expect(swept).toBeGreaterThanOrEqual(slow - SWEEP_WITHIN_MM - slowOver(150));
    });
    expect(outside).toBeGreaterThan(30);
  });

  test.each([1, 2])('in whole turns covers all of it, and three cells more at most (seed %i)', (seed) => {
    const mesh = part(seededRandom(seed), [70, 0, 0]);
    const whole: Turn = { ...SOME_TURN, fromRad: 0, toRad: 2 * Math.PI };
    const outside = eachPlace(seed + 30, mesh, whole, (swept, slow) => {
      expect(swept).toBeLessThanOrEqual(slow + SWEEP_WITHIN_MM);
      expect(swept).toBeGreaterThanOrEqual(slow - 3 * Math.SQRT2 - SWEEP_WITHIN_MM - slowOver(800));
    });
    expect(outside).toBeGreaterThan(20);
  });

  test('a pulley turned all round is the pulley: closed form of a ring', () => {
    // One radial blade from 20 to 60 mm, 10 mm high, turned round z: the ring 20..60 by 0..10.
    const blade = soupOf([
      ...[[20, 0, 0] as Vec3, [60, 0, 0] as Vec3, [60, 0, 10] as Vec3],
      ...[[20, 0, 0] as Vec3, [60, 0, 10] as Vec3, [20, 0, 10] as Vec3],
    ]);
    const ring = withSweeps(blade, () => ({ ...SOME_TURN, fromRad: 0, toRad: 2 * Math.PI }));
    for (const deg of [0, 37, 90, 181, 300]) {
      const out = (r: number, z: number): Vec3 => [
        r * Math.cos((deg * Math.PI) / 180),
        r * Math.sin((deg * Math.PI) / 180),
        z,
      ];
      for (const [p, mm] of [
        [out(100, 5), 40],
        [out(63, 14), 5],
        [out(40, 30), 20],
        [out(0, 5), 20],
      ] as const) {
        const found = bruteForceDistance(ring, p);
        expect(found).toBeLessThanOrEqual(mm + SWEEP_WITHIN_MM);
        expect(found).toBeGreaterThan(mm - 3 * Math.SQRT2);
      }
    }
  });

  test('does not change when part, axis and place are moved and turned together', () => {
    const mesh = part(seededRandom(7), [70, 0, 0]);
    const axis = unit([1, 2, 3]);
    const moved = (v: Vec3): Vec3 => add(turnAbout(v, axis, 1.1), [40, -30, 25]);
    const corners = Array.from({ length: mesh.positions.length / 3 }, (_, i) =>
      moved([...mesh.positions.slice(3 * i, 3 * i + 3)] as unknown as Vec3),
    );
    const there = withSweeps(soupOf(corners), () => ({
      ...SOME_TURN,
      point: moved([0, 0, 0]),
      axis: scale(turnAbout([0, 0, 1], axis, 1.1), 5),
    }));
    const here = withSweeps(mesh, () => SOME_TURN);
    const random = seededRandom(8);
    for (let n = 0; n < 50; n++) {
      const p = randomPoint(random, 300);
      expect(bruteForceDistance(there, moved(p))).toBeCloseTo(bruteForceDistance(here, p), 3);
    }
  });

  test('leaves what stands as it is, and keeps the names of parts', () => {
    const mesh = part(seededRandom(7), [70, 0, 0]);
    expect(withSweeps(mesh, () => undefined)).toBe(mesh);
    const swept = withSweeps(mesh, () => SOME_TURN);
    expect(swept.parts.map(({ name }) => name)).toEqual(['soup', 'soup']);
    expect(swept.parts[0]).toEqual(mesh.parts[0]);
    const last = swept.parts[1];
    expect(((last?.firstTriangle ?? 0) + (last?.triangleCount ?? 0)) * 3).toBe(swept.indices.length);
  });
});
