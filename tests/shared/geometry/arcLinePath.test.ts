import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { anySquareTo, cross, distance, scale, turnAbout, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import {
  type ArcLinePath,
  joinPaths,
  partOfPath,
  pathEnd,
  pathLengthMm,
  poseOnPath,
  posesAtJoints,
  reversedPath,
  samplePath,
  tidiedPath,
  tightestRadiusMm,
} from '../../../shared/geometry/arcLinePath.ts';

/** Straight 50 along +X, quarter R100 to +Y, straight 100, quarter R100 to +Z, straight 50: worked out by hand. */
const TWO_BENDS: ArcLinePath = {
  start: { point: [0, 0, 0], direction: [1, 0, 0] },
  segments: [
    { kind: 'line', lengthMm: 50 },
    { kind: 'arc', radiusMm: 100, angleRad: Math.PI / 2, normal: [0, 1, 0] },
    { kind: 'line', lengthMm: 100 },
    { kind: 'arc', radiusMm: 100, angleRad: Math.PI / 2, normal: [0, 0, 1] },
    { kind: 'line', lengthMm: 50 },
  ],
};

function expectNear(got: Vec3, wanted: Vec3): void {
  expect(distance(got, wanted)).toBeLessThan(1e-9);
}

function randomPath(seed: number): ArcLinePath {
  const random = seededRandom(seed);
  let direction = unit([random() - 0.5, random() - 0.5, random() - 0.5]);
  const start = { point: [random() * 100, random() * 100, random() * 100] as Vec3, direction };
  const segments: ArcLinePath['segments'][number][] = [];
  for (let i = 0; i < 6; i++) {
    if (random() < 0.4) segments.push({ kind: 'line', lengthMm: 10 + 90 * random() });
    else {
      const normal = turnAbout(anySquareTo(direction), direction, random() * 6);
      const angleRad = 0.1 + 3 * random();
      segments.push({ kind: 'arc', radiusMm: 40 + 100 * random(), angleRad, normal });
      direction = turnAbout(direction, cross(direction, normal), angleRad);
    }
  }
  return { start, segments };
}

describe('a path of straights and arcs', () => {
  it('has the length and the joints of the hand-worked two-bend hose', () => {
    expect(pathLengthMm(TWO_BENDS)).toBeCloseTo(200 + 100 * Math.PI, 10);
    const joints = posesAtJoints(TWO_BENDS).map(({ point }) => point);
    const wanted: Vec3[] = [
      [0, 0, 0],
      [50, 0, 0],
      [150, 100, 0],
      [150, 200, 0],
      [150, 300, 100],
      [150, 300, 150],
    ];
    wanted.forEach((point, i) => {
      expectNear(joints[i] as Vec3, point);
    });
    expectNear(pathEnd(TWO_BENDS).direction, [0, 0, 1]);
  });

  it('stands at the known place half way round an arc', () => {
    const pose = poseOnPath(TWO_BENDS, 50 + (100 * Math.PI) / 4);
    expectNear(pose.point, [50 + 100 * Math.SQRT1_2, 100 - 100 * Math.SQRT1_2, 0]);
    expectNear(pose.direction, [Math.SQRT1_2, Math.SQRT1_2, 0]);
  });

  it('stays at its ends when asked for places beyond them', () => {
    expectNear(poseOnPath(TWO_BENDS, -5).point, [0, 0, 0]);
    expectNear(poseOnPath(TWO_BENDS, 1e6).point, [150, 300, 150]);
  });

  it('gone backwards is the same curve with the directions turned round', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const path = randomPath(seed);
      const back = reversedPath(path);
      const total = pathLengthMm(path);
      expect(pathLengthMm(back)).toBeCloseTo(total, 9);
      for (const share of [0, 0.13, 0.5, 0.77, 1]) {
        const ahead = poseOnPath(path, share * total);
        const behind = poseOnPath(back, (1 - share) * total);
        expectNear(behind.point, ahead.point);
        expectNear(behind.direction, scale(ahead.direction, -1));
      }
    }
  });

  it('cut in two and joined again is what it was', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const path = randomPath(seed);
      const total = pathLengthMm(path);
      const cut = total * 0.37;
      const joined = joinPaths(partOfPath(path, 0, cut), partOfPath(path, cut, total));
      expect(joined.segments.length).toBe(tidiedPath(path).segments.length);
      expectNear(poseOnPath(joined, total * 0.6).point, poseOnPath(path, total * 0.6).point);
      expectNear(pathEnd(joined).point, pathEnd(path).point);
    }
  });

  it('is sampled with both ends, at even distances no longer than asked', () => {
    const samples = samplePath(TWO_BENDS, 7);
    const total = pathLengthMm(TWO_BENDS);
    const count = Math.ceil(total / 7);
    expect(samples.length).toBe(count + 1);
    samples.forEach(({ point }, i) => {
      expectNear(point, poseOnPath(TWO_BENDS, (i * total) / count).point);
    });
  });

  it('knows its tightest radius', () => {
    expect(tightestRadiusMm(TWO_BENDS)).toBe(100);
    expect(tightestRadiusMm({ start: TWO_BENDS.start, segments: [{ kind: 'line', lengthMm: 5 }] })).toBe(Infinity);
  });
});
