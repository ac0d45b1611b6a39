import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { distance, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { connectionPath, connectPoses, connectWithShortTurns } from '../../../shared/geometry/arcLineConnector.ts';
import { type Pose, pathEnd, pathLengthMm, tightestRadiusMm } from '../../../shared/geometry/arcLinePath.ts';
import { planarDubins } from '../../oracles/planarDubins.ts';

const TURN = 2 * Math.PI;

function randomPose(random: () => number, size: number): Pose {
  const within = (): number => (random() - 0.5) * size;
  return { point: [within(), within(), within()], direction: unit([within(), within(), within()]) };
}

/**
 * The length by the plain iteration of tangent lengths, in at most 50 steps: written down anew, as a polyline of three edges with rounded
 * corners. Nothing where it comes to no rest, or its straight has less than no length.
 */
function byPlainIteration(from: Pose, to: Pose, radiusMm: number): number | undefined {
  const between = to.point.map((v, k) => v - (from.point[k] as number)) as unknown as Vec3;
  const along = (p: Vec3, q: Vec3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  let straight = unit(between);
  for (let step = 0; step < 50; step++) {
    const turns = [from, to].map(({ direction }) => Math.acos(Math.max(-1, Math.min(1, along(direction, straight)))));
    const [a, b] = turns.map((turn) => radiusMm * Math.tan(turn / 2)) as [number, number];
    if (!(a < 1e6 && b < 1e6)) return undefined;
    const edge = between.map(
      (v, k) => v - a * (from.direction[k] as number) - b * (to.direction[k] as number),
    ) as unknown as Vec3;
    const next = unit(edge);
    const change = distance(next, straight);
    straight = next;
    const left = Math.sqrt(along(edge, edge)) - a - b;
    if (change < 1e-13) return left < 0 ? undefined : left + radiusMm * turns.reduce((sum, turn) => sum + turn, 0);
  }
  return undefined;
}

describe('arc, straight, arc', () => {
  it('joins the two-bend ends by two quarter turns and a straight of 100', () => {
    const from: Pose = { point: [50, 0, 0], direction: [1, 0, 0] };
    const to: Pose = { point: [150, 300, 100], direction: [0, 0, 1] };
    const found = connectPoses(from, to, 100);
    expect(found?.lengthMm).toBeCloseTo(100 * Math.PI + 100, 8);
    expect(found?.firstTurnRad).toBeCloseTo(Math.PI / 2, 9);
    expect(found?.straightMm).toBeCloseTo(100, 8);
  });

  it('is a straight where the ends look along one line', () => {
    const found = connectPoses(
      { point: [0, 0, 0], direction: [1, 0, 0] },
      { point: [300, 0, 0], direction: [1, 0, 0] },
      75,
    );
    expect(found?.lengthMm).toBeCloseTo(300, 9);
  });

  it('is never longer than the planar closed form for ends more than four radii apart', () => {
    const random = seededRandom(11);
    for (let i = 0; i < 400; i++) {
      const away = 310 + 400 * random();
      const bearing = TURN * random();
      const heading = TURN * random();
      const [x, y] = [away * Math.cos(bearing), away * Math.sin(bearing)];
      const to: Pose = { point: [x, y, 0], direction: [Math.cos(heading), Math.sin(heading), 0] };
      const found = connectPoses({ point: [0, 0, 0], direction: [1, 0, 0] }, to, 75);
      const planar = planarDubins(x, y, heading, 75);
      // Turns of all but pi are outside the promised range.
      if (Math.min(Math.abs(planar.firstRad - Math.PI), Math.abs(planar.lastRad - Math.PI)) < 0.02) continue;
      expect(found?.lengthMm ?? Infinity).toBeLessThan(planar.lengthMm + 1e-6);
    }
  });

  it('ends where and as it should, whatever its turns', () => {
    const random = seededRandom(3);
    let joined = 0;
    for (let i = 0; i < 400; i++) {
      const from = randomPose(random, 600);
      const to = randomPose(random, 600);
      for (const found of [connectPoses(from, to, 75), connectWithShortTurns(from, to, 75)]) {
        if (!found) continue;
        joined++;
        const path = connectionPath(from, to, found);
        expect(distance(pathEnd(path).point, to.point)).toBeLessThan(1e-5);
        expect(distance(pathEnd(path).direction, to.direction)).toBeLessThan(1e-7);
        expect(pathLengthMm(path)).toBeCloseTo(found.lengthMm, 6);
        expect(tightestRadiusMm(path)).toBeGreaterThanOrEqual(75);
      }
    }
    expect(joined).toBeGreaterThan(600);
  });

  it('is as long from the far end, with the directions turned round', () => {
    const random = seededRandom(8);
    const round = ({ point, direction: [x, y, z] }: Pose): Pose => ({ point, direction: [-x, -y, -z] as Vec3 });
    for (let i = 0; i < 200; i++) {
      const [from, to] = [randomPose(random, 800), randomPose(random, 800)];
      const ahead = connectWithShortTurns(from, to, 60);
      const back = connectWithShortTurns(round(to), round(from), 60);
      expect(back === undefined).toBe(ahead === undefined);
      if (ahead && back) expect(back.lengthMm).toBeCloseTo(ahead.lengthMm, 6);
    }
  });

  it('is found with short turns wherever the plain iteration comes to rest in fifty steps', () => {
    const random = seededRandom(23);
    let found = 0;
    for (let i = 0; i < 6000; i++) {
      const [from, to] = [randomPose(random, 600), randomPose(random, 600)];
      const expected = byPlainIteration(from, to, 75);
      const connection = connectWithShortTurns(from, to, 75);
      if (expected === undefined) continue;
      found++;
      expect(connection?.lengthMm).toBeCloseTo(expected, 6);
    }
    expect(found).toBeGreaterThan(1000);
  });
});
