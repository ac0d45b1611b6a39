import { expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { gridOver } from '../../../../shared/solve/search/goalDistance.ts';
import { LeastSeen } from '../../../../shared/solve/search/leastSeen.ts';

const GRID = gridOver({ min: [0, 0, 0], max: [30, 10, 10] }, 10);
const [FIRST, SECOND, THIRD]: Vec3[] = [
  [5, 5, 5],
  [15, 5, 5],
  [25, 5, 5],
];

function of(places: readonly Vec3[]): LeastSeen {
  const seen = new LeastSeen(GRID);
  for (const [node, place] of places.entries()) seen.add(node, place);
  return seen;
}

const all = (): boolean => true;

it('goes round the cells, newest first in each, and ends', () => {
  const seen = of([FIRST!, FIRST!, FIRST!, SECOND!, SECOND!, THIRD!]);
  expect(Array.from({ length: 7 }, () => seen.pop(all))).toEqual([2, 4, 5, 1, 3, 0, -1]);
});

it('comes first to a cell that is reached late, until it was seen as often', () => {
  const seen = of([FIRST!, FIRST!, FIRST!, FIRST!]);
  expect([seen.pop(all), seen.pop(all)]).toEqual([3, 2]);
  for (const node of [4, 5, 6]) seen.add(node, SECOND!);
  expect([seen.pop(all), seen.pop(all)]).toEqual([6, 5]);
  expect([seen.pop(all), seen.pop(all)].sort()).toEqual([1, 4]);
});

it('does not count what is no longer open', () => {
  const seen = of([FIRST!, FIRST!, SECOND!]);
  expect(seen.pop((node) => node !== 1 && node !== 0)).toBe(2);
  expect(seen.pop(all)).toBe(-1);
});
