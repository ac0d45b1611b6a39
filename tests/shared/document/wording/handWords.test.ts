import { expect, it } from 'vitest';
import { directionWords } from '../../../../shared/document/wording/handWords.ts';

it.each([
  [[0, 0, 1], 'up'],
  [[0, 0, -1], 'down'],
  [[-1, 0, 0.1], '-X'],
  [[0.6, 0, 0.8], 'up and +X'],
  [[0.6, -0.6, -0.53], '+X and -Y and down'],
] as const)('%j points %s', (direction, words) => {
  expect(directionWords(direction)).toBe(words);
});
