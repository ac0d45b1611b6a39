import { expect, test } from 'vitest';
import { middlePress } from '../../../renderer/scene/middlePress.ts';
import type { Vec3 } from '../../../shared/base/vec3.ts';

const HERE: Vec3 = [10, 20, 30];
const BESIDE: Vec3 = [10, 21, 30];

test('the key marks what is in the middle, then takes it, once for one look', () => {
  expect(middlePress({ there: HERE, marked: null, taken: null })).toBe('mark');
  expect(middlePress({ there: HERE, marked: HERE, taken: null })).toBe('take');
  expect(middlePress({ there: HERE, marked: HERE, taken: HERE })).toBe('taken');
  expect(middlePress({ there: HERE, marked: null, taken: HERE })).toBe('taken');
});

test('with the look moved it marks and takes the next place, and nothing where there is no bay', () => {
  expect(middlePress({ there: BESIDE, marked: HERE, taken: HERE })).toBe('mark');
  expect(middlePress({ there: BESIDE, marked: BESIDE, taken: HERE })).toBe('take');
  expect(middlePress({ there: null, marked: HERE, taken: HERE })).toBe('mark');
});
