import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { CLEARANCE_PROOF_MM } from '../../../../shared/base/tolerances.ts';
import { add, distance, scale, turnAbout, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { Cancelled, UNWATCHED } from '../../../../shared/base/watch.ts';
import { connectPoses } from '../../../../shared/geometry/arcLineConnector.ts';
import {
  type ArcLinePath,
  type Pose,
  pathEnd,
  pathLengthMm,
  samplePath,
  tightestRadiusMm,
} from '../../../../shared/geometry/arcLinePath.ts';
import type { EndChoice, SearchProblem, SearchResult } from '../../../../shared/solve/search/problem.ts';
import { searchWays } from '../../../../shared/solve/search/searchWays.ts';
import { posePairs } from '../../../arbitraries/posePairs.ts';
import { analyticField, type Obstacle } from './analyticField.ts';

const BOUNDS = { min: [-500, -400, -300], max: [500, 400, 300] } as const;
const RADIUS = 75;
const FREE_PAIRS = path.resolve(import.meta.dirname, '../../../fixtures/freePairs/reference.json');

interface FreePairs {
  readonly seed: number;
  readonly pairs: readonly { readonly length: number }[];
}

const KEEP_MM = 15;

function held(point: Vec3, direction: Vec3): EndChoice {
  return { kind: 'held', pose: { point, direction } };
}

function problemIn(
  obstacles: readonly Obstacle[],
  from: EndChoice,
  to: EndChoice,
  more: Partial<SearchProblem> = {},
): SearchProblem {
  const field = analyticField(obstacles, KEEP_MM, BOUNDS);
  return { from, to, minRadiusMm: RADIUS, field, ways: 1, seed: 1, effort: 'quick', ...more };
}

/** Everything a way promises, by brute force: ends, radius, length, and the margin every quarter of a millimetre. */
function expectWaysHold(problem: SearchProblem, result: SearchResult): void {
  expect(result.outcome).toBe('found');
  const poseOf = (end: EndChoice, clock: number): Pose => (end.kind === 'held' ? end.pose : end.poseAt(clock));
  for (const way of result.ways) {
    expectSamePose(way.path.start, poseOf(problem.from, way.fromClockRad));
    expectSamePose(pathEnd(way.path), poseOf(problem.to, way.toClockRad));
    expect(tightestRadiusMm(way.path)).toBeGreaterThanOrEqual(problem.minRadiusMm);
    expect(pathLengthMm(way.path)).toBeCloseTo(way.lengthMm, 6);
    const least = leastMargin(problem, way.path);
    expect(least).toBeGreaterThanOrEqual(-CLEARANCE_PROOF_MM);
    expect(way.leastMarginMm).toBeLessThanOrEqual(least + 1e-9);
    expect(way.leastMarginMm).toBeGreaterThanOrEqual(-2 * CLEARANCE_PROOF_MM);
  }
}

function expectSamePose(got: Pose, wanted: Pose): void {
  expect(distance(got.point, wanted.point)).toBeLessThan(1e-5);
  expect(distance(got.direction, wanted.direction)).toBeLessThan(1e-6);
}

function leastMargin({ field }: SearchProblem, path: ArcLinePath): number {
  return Math.min(...samplePath(path, 0.25).map(({ point: [x, y, z] }) => field.marginMm(x, y, z, 1e6)));
}

function backwards(problem: SearchProblem): SearchProblem {
  const round = (end: EndChoice): EndChoice => {
    const turned = ({ point, direction }: Pose): Pose => ({ point, direction: scale(direction, -1) });
    if (end.kind === 'held') return { kind: 'held', pose: turned(end.pose) };
    return { kind: 'turning', poseAt: (clock) => turned(end.poseAt(clock)) };
  };
  return { ...problem, from: round(problem.to), to: round(problem.from) };
}

describe('in free space', () => {
  it('is as long as the shortest arc-straight-arc connection', () => {
    const random = seededRandom(4);
    for (let i = 0; i < 20; i++) {
      const pose = (x: number): Pose => ({
        point: [x, (random() - 0.5) * 300, (random() - 0.5) * 200],
        direction: unit([1, random() - 0.5, random() - 0.5]),
      });
      const [a, b] = [pose(-350), pose(350)];
      const problem = problemIn([], { kind: 'held', pose: a }, { kind: 'held', pose: b });
      const result = searchWays(problem, UNWATCHED);
      expectWaysHold(problem, result);
      expect(result.ways[0]?.lengthMm).toBeCloseTo(connectPoses(a, b, RADIUS)?.lengthMm as number, 4);
    }
  });

  it('is as short as the shortest known curve of bounded curvature, ports 0.5 to 10 radii apart', () => {
    const { seed, pairs: known } = JSON.parse(readFileSync(FREE_PAIRS, 'utf8')) as FreePairs;
    for (const [i, { from, to }] of posePairs(seed, known.length).entries()) {
      const end = ({ point, direction }: Pose): EndChoice => held(scale(point, RADIUS), direction);
      const bounds = { min: [-1500, -1500, -1500], max: [1500, 1500, 1500] } as const;
      const field = analyticField([], KEEP_MM, bounds);
      const problem: SearchProblem = { ...problemIn([], end(from), end(to)), field };
      const [way] = searchWays(problem, UNWATCHED).ways;
      expect((way?.lengthMm as number) / RADIUS / (known[i] as { length: number }).length).toBeLessThan(1.005);
    }
  });

  it('has one way only, however many are wanted', () => {
    const problem = problemIn([], held([-300, 0, 0], [1, 0, 0]), held([300, 50, 0], [1, 0, 0]), { ways: 3 });
    expect(searchWays(problem, UNWATCHED).ways.length).toBe(1);
  });

  it('turns a swivel end to the clock that faces the other end', () => {
    // An elbow on a port at (-300, 0, 0) with axis +X: its mouth leaves sideways, at 30 mm from the axis.
    const poseAt = (clock: number): Pose => {
      const out = turnAbout([0, 1, 0], [1, 0, 0], clock);
      return { point: add([-300, 0, 0], scale(out, 30)), direction: out };
    };
    const problem = problemIn([], { kind: 'turning', poseAt }, held([-300, 0, 280], [0, 0, 1]), { effort: 'normal' });
    const result = searchWays(problem, UNWATCHED);
    expectWaysHold(problem, result);
    // At 90 degrees the mouth looks straight at the goal: 250 mm, and nothing is shorter.
    expect(result.ways[0]?.fromClockRad).toBeCloseTo(Math.PI / 2, 1);
    expect(result.ways[0]?.lengthMm).toBeLessThan(250.5);
    expect(result.ways[0]?.lengthMm).toBeGreaterThanOrEqual(250 - 1e-9);
  });
});

describe('through walls', () => {
  const wall = (holes: { y: number; z: number; radius: number }[]): Obstacle => ({ kind: 'wall', x: 0, holes });

  it('goes through the one hole', () => {
    const problem = problemIn(
      [wall([{ y: 150, z: 0, radius: 60 }])],
      held([-300, -100, 0], [1, 0, 0]),
      held([300, -100, 0], [1, 0, 0]),
    );
    const result = searchWays(problem, UNWATCHED);
    expectWaysHold(problem, result);
    // No shorter than the taut string through the hole's near edge, y = 150 - (60 - 15).
    expect(result.ways[0]?.lengthMm).toBeGreaterThan(2 * Math.hypot(300, 205));
    expect(result.ways[0]?.lengthMm).toBeLessThan(1.1 * 2 * Math.hypot(300, 205));
  });

  it('gives two ways through two holes, one through each', () => {
    const holes = [
      { y: 150, z: 0, radius: 60 },
      { y: -170, z: 0, radius: 60 },
    ];
    const problem = problemIn([wall(holes)], held([-300, 0, 0], [1, 0, 0]), held([300, 0, 0], [1, 0, 0]), {
      ways: 2,
      effort: 'normal',
    });
    const result = searchWays(problem, UNWATCHED);
    expectWaysHold(problem, result);
    const crossings = result.ways.map(
      ({ path }) => samplePath(path, 1).find(({ point }) => point[0] >= 0)?.point[1] as number,
    );
    expect(crossings.map(Math.sign).sort()).toEqual([-1, 1]);
    expect(result.ways[0]?.lengthMm).toBeLessThanOrEqual(result.ways[1]?.lengthMm as number);
  });

  it('says that there is no way through a wall without a hole, and what is in the way', () => {
    const solid: Obstacle = { kind: 'block', min: [-20, -600, -500], max: [20, 600, 500] };
    const problem = problemIn([solid], held([-300, 0, 0], [1, 0, 0]), held([300, 40, 0], [1, 0, 0]));
    const result = searchWays(problem, UNWATCHED);
    expect(result.outcome).toBe('no-way-found');
    expect(result.ways).toEqual([]);
    const worst = result.bestNearMiss?.worst;
    // Deepest in the block: 20 below its surface, 15 short of the clearance.
    expect(worst?.marginMm).toBeCloseTo(-35, 0);
    expect(Math.abs(worst?.point[0] as number)).toBeLessThan(1);
  });

  it('makes a U-turn between two plates', () => {
    const plates: Obstacle[] = [
      { kind: 'block', min: [-600, -500, 40], max: [600, 500, 50] },
      { kind: 'block', min: [-600, -500, -50], max: [600, 500, -40] },
    ];
    const problem = problemIn(plates, held([-300, -100, 0], [1, 0, 0]), held([-300, 100, 0], [-1, 0, 0]));
    const result = searchWays(problem, UNWATCHED);
    expectWaysHold(problem, result);
    // Two quarter turns and a straight across.
    expect(result.ways[0]?.lengthMm).toBeLessThan(1.001 * (Math.PI * RADIUS + 50));
  });
});

describe('blocked ends', () => {
  const ball: Obstacle = { kind: 'ball', centre: [300, 0, 0], radius: 50 };

  it('names the goal, and how far short it is', () => {
    const result = searchWays(
      problemIn([ball], held([-300, 0, 0], [1, 0, 0]), held([300, 20, 0], [1, 0, 0])),
      UNWATCHED,
    );
    expect(result.outcome).toBe('goal-blocked');
    expect(result.bestNearMiss?.worst.marginMm).toBeLessThanOrEqual(-45 + 1e-6);
  });

  it('names the start', () => {
    const result = searchWays(
      problemIn([ball], held([300, 20, 0], [1, 0, 0]), held([-300, 0, 0], [1, 0, 0])),
      UNWATCHED,
    );
    expect(result.outcome).toBe('start-blocked');
  });
});

/**
 * Clutter with a clear tube carved through it, so that a way exists by construction: the tube's middle is
 * (x, A sin(kx + p), B sin(mx + q)), whose curvature is at most A k^2 + B m^2, here under 1/75. Balls are left out where they reach it.
 */
function carvedClutter(seed: number): { obstacles: Obstacle[]; from: Pose; to: Pose; tubeMm: number } {
  const random = seededRandom(1000 + seed);
  const spread = (half: number): number => (2 * random() - 1) * half;
  const [k, m] = [(2 * Math.PI) / (500 + 300 * random()), (2 * Math.PI) / (500 + 300 * random())];
  const [a, b] = [0.008 / k ** 2, 0.004 / m ** 2];
  const [p, q] = [spread(3), spread(3)];
  const poseAt = (x: number): Pose => ({
    point: [x, a * Math.sin(k * x + p), b * Math.sin(m * x + q)],
    direction: unit([1, a * k * Math.cos(k * x + p), b * m * Math.cos(m * x + q)]),
  });
  const tube = Array.from({ length: 401 }, (_, i) => poseAt(2 * i - 400).point);
  const obstacles: Obstacle[] = [];
  for (let i = 0; i < 150; i++) {
    const centre: Vec3 = [spread(480), spread(380), spread(280)];
    const radius = 25 + 45 * random();
    const gap = Math.min(...tube.map((point) => distance(point, centre))) - radius;
    if (gap > KEEP_MM + 2) obstacles.push({ kind: 'ball', centre, radius });
  }
  const tubeMm = tube.slice(1).reduce((sum, point, i) => sum + distance(point, tube[i] as Vec3), 0);
  return { obstacles, from: poseAt(-400), to: poseAt(400), tubeMm };
}

describe('through seeded clutter with a tube carved through it', () => {
  for (let block = 0; block < 4; block++) {
    it(`solves instances ${10 * block + 1} to ${10 * block + 10}, no longer than the tube`, () => {
      for (let seed = 10 * block + 1; seed <= 10 * block + 10; seed++) {
        const { obstacles, from, to, tubeMm } = carvedClutter(seed);
        const problem = problemIn(obstacles, { kind: 'held', pose: from }, { kind: 'held', pose: to });
        const result = searchWays(problem, UNWATCHED);
        expectWaysHold(problem, result);
        expect(result.ways[0]?.lengthMm).toBeLessThan(1.005 * tubeMm);
      }
    });
  }

  it('gives the same bytes twice', () => {
    const { obstacles, from, to } = carvedClutter(5);
    const problem = problemIn(obstacles, { kind: 'held', pose: from }, { kind: 'held', pose: to }, { ways: 2 });
    expect(JSON.stringify(searchWays(problem, UNWATCHED))).toBe(JSON.stringify(searchWays(problem, UNWATCHED)));
  });

  it('is as long backwards, within 2 %', () => {
    for (let seed = 1; seed <= 4; seed++) {
      const { obstacles, from, to } = carvedClutter(seed);
      const problem = problemIn(
        obstacles,
        { kind: 'held', pose: from },
        { kind: 'held', pose: to },
        { effort: 'normal' },
      );
      const ahead = searchWays(problem, UNWATCHED).ways[0]?.lengthMm as number;
      const back = searchWays(backwards(problem), UNWATCHED).ways[0]?.lengthMm as number;
      expect(Math.abs(back - ahead) / ahead).toBeLessThan(0.02);
    }
  });
});

it('stops when it is cancelled', () => {
  const problem = problemIn(
    [{ kind: 'ball', centre: [0, 0, 0], radius: 200 }],
    held([-300, 0, 0], [1, 0, 0]),
    held([300, 0, 0], [1, 0, 0]),
  );
  expect(() => searchWays(problem, { ...UNWATCHED, isCancelled: () => true })).toThrow(Cancelled);
});

it('takes a field that answers infinity beyond what it was asked for', () => {
  const plain = analyticField([{ kind: 'wall', x: 0, holes: [{ y: 150, z: 0, radius: 60 }] }], 15, BOUNDS);
  const marginMm = (x: number, y: number, z: number, upTo: number): number => {
    const margin = plain.marginMm(x, y, z, upTo);
    return margin >= upTo ? Number.POSITIVE_INFINITY : margin;
  };
  const problem = problemIn([], held([-300, -100, 0], [1, 0, 0]), held([300, -100, 0], [1, 0, 0]));
  const result = searchWays({ ...problem, field: { ...plain, marginMm } }, UNWATCHED);
  expectWaysHold({ ...problem, field: plain }, result);
});
