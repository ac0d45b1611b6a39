import { describe, expect, it } from 'vitest';
import { type RandomSource, seededRandom } from '../../../../shared/base/random.ts';
import { scale, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { SearchProblem } from '../../../../shared/solve/search/problem.ts';
import { searchWays } from '../../../../shared/solve/search/searchWays.ts';
import { exhaustiveLattice, type LatticePose } from '../../../oracles/exhaustiveLattice.ts';
import { analyticField, type Obstacle } from './analyticField.ts';

const RADIUS = 60;
const KEEP_MM = 12;
const MOST: Vec3 = [8, 6, 6];
const BOUNDS = {
  min: [-1, -1, -1],
  max: [MOST[0] * RADIUS + 1, MOST[1] * RADIUS + 1, MOST[2] * RADIUS + 1],
} as const;

interface SmallBay {
  readonly obstacles: readonly Obstacle[];
  readonly from: LatticePose;
  readonly to: LatticePose;
}

/** A bay of a few steps with blocks and balls strewn in it and poses on the grid. */
function smallBay(seed: number): SmallBay {
  const random = seededRandom(900 + seed);
  const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
  const axis = (): Vec3 => {
    const v: [number, number, number] = [0, 0, 0];
    v[whole(0, 2)] = random() < 0.5 ? 1 : -1;
    return v;
  };
  const from = { step: [1, whole(1, 5), whole(1, 5)] as Vec3, direction: axis() };
  const to = { step: [7, whole(1, 5), whole(1, 5)] as Vec3, direction: axis() };
  return { obstacles: Array.from({ length: 10 }, () => obstacle(random)), from, to };
}

function obstacle(random: RandomSource): Obstacle {
  const place = (k: number): number => random() * MOST[k]! * RADIUS;
  const centre: Vec3 = [place(0), place(1), place(2)];
  if (random() < 0.5) return { kind: 'ball', centre, radius: 30 + 50 * random() };
  const half = [10 + 60 * random(), 10 + 90 * random(), 10 + 90 * random()] as const;
  return {
    kind: 'block',
    min: [centre[0] - half[0], centre[1] - half[1], centre[2] - half[2]],
    max: [centre[0] + half[0], centre[1] + half[1], centre[2] + half[2]],
  };
}

function problemOf({ obstacles, from, to }: SmallBay): SearchProblem {
  const held = ({ step, direction }: LatticePose) =>
    ({ kind: 'held', pose: { point: scale(step, RADIUS), direction } }) as const;
  return {
    from: held(from),
    to: held(to),
    minRadiusMm: RADIUS,
    field: analyticField(obstacles, KEEP_MM, BOUNDS),
    ways: 1,
    seed: 1,
    effort: 'normal',
    withoutNearMiss: true,
  };
}

describe('beside an exhaustive search over a small lattice of straights and quarter turns', () => {
  it.each([0, 1, 2, 3])('finds a way wherever the lattice has one, and none longer (block %d of 12)', (block) => {
    let solved = 0;
    for (let seed = 12 * block; seed < 12 * block + 12; seed++) {
      const bay = smallBay(seed);
      const problem = problemOf(bay);
      const { marginMm } = problem.field;
      // The lattice is asked for a hair more than the search proves, so that sampling forgives nothing.
      const margin = ([x, y, z]: Vec3): number => marginMm(x, y, z, 1e6) - 0.3;
      const shortest = exhaustiveLattice(bay.from, bay.to, RADIUS, MOST, margin);
      const result = searchWays(problem, UNWATCHED);
      if (shortest === undefined) continue;
      solved++;
      expect([seed, result.outcome]).toEqual([seed, 'found']);
      expect(result.ways[0]!.lengthMm / shortest).toBeLessThan(1.001);
    }
    expect(solved).toBeGreaterThan(3);
  });
});

describe('where nothing joins the ends', () => {
  const cell = (x: number): Obstacle[] => [
    { kind: 'block', min: [x - 70, 100, 100], max: [x - 68, 260, 260] },
    { kind: 'block', min: [x + 68, 100, 100], max: [x + 70, 260, 260] },
    { kind: 'block', min: [x - 70, 100, 100], max: [x + 70, 102, 260] },
    { kind: 'block', min: [x - 70, 258, 100], max: [x + 70, 260, 260] },
    { kind: 'block', min: [x - 70, 100, 100], max: [x + 70, 260, 102] },
    { kind: 'block', min: [x - 70, 100, 258], max: [x + 70, 260, 260] },
  ];
  const pose = (x: number): LatticePose => ({ step: [x / RADIUS, 3, 3], direction: [1, 0, 0] });

  it.each([
    ['the start', cell(120), pose(120), pose(420)],
    ['the goal', cell(360), pose(60), pose(360)],
  ])('says so at once when %s is shut in by thin walls', (_, obstacles, from, to) => {
    const result = searchWays(problemOf({ obstacles, from, to }), UNWATCHED);
    expect(result.outcome).toBe('no-way-found');
    expect(result.ways).toEqual([]);
    // A proof on cells, before any state of a lattice was opened.
    expect(result.expanded).toBe(0);
  });

  it('does not say so when a hole just wider than the hose is left', () => {
    const obstacles = cell(120).filter((o) => !(o.kind === 'block' && o.min[0] === 188));
    const hole: Obstacle = { kind: 'wall', x: 189, holes: [{ y: 180, z: 180, radius: KEEP_MM + 1.5 }] };
    const result = searchWays(
      problemOf({ obstacles: [...obstacles, hole], from: pose(120), to: pose(420) }),
      UNWATCHED,
    );
    expect(result.outcome).toBe('found');
  });
});
