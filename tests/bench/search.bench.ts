import { bench, describe } from 'vitest';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { SearchProblem } from '../../shared/solve/search/problem.ts';
import { searchWays } from '../../shared/solve/search/searchWays.ts';
import { analyticField, type Obstacle } from '../shared/solve/search/analyticField.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/**
 * How long the search for ways takes in bays known in closed form, beside the reference piece in the same
 * run: the ratio is the figure to compare between versions and machines.
 */

const BOUNDS = { min: [-500, -400, -300], max: [500, 400, 300] } as const;
const HOLE: Obstacle = { kind: 'wall', x: 0, holes: [{ y: 150, z: 0, radius: 60 }] };
const POSTS = Array.from({ length: 40 }, (_, i): Obstacle => {
  const row = Math.floor(i / 8);
  return { kind: 'post', x: -200 + (i % 8) * 60, y: -200 + row * 100 + (i % 2) * 50, radius: 12 };
});

function problem(obstacles: readonly Obstacle[], ways: number): SearchProblem {
  return {
    from: { kind: 'held', pose: { point: [-350, 0, 0], direction: [1, 0, 0] } },
    to: { kind: 'held', pose: { point: [350, 0, 0], direction: [0, 0, 1] } },
    minRadiusMm: 75,
    field: analyticField(obstacles, 15, BOUNDS),
    ways,
    seed: 1,
    effort: 'normal',
  };
}

function search(obstacles: readonly Obstacle[], ways: number): void {
  keep(searchWays(problem(obstacles, ways), UNWATCHED).ways.length);
}

describe('search for ways', () => {
  bench(REFERENCE, () => keep(reference()));
  bench('through the one hole of a wall', () => search([HOLE], 1));
  bench('one way between forty posts', () => search(POSTS, 1));
  bench('three ways between forty posts', () => search(POSTS, 3));
});
