import { expect, it } from 'vitest';
import { leastSlackMm, tightOrder, worstExtreme } from '../../../../shared/document/lay/tightOrder.ts';
import { rockWith, straightLay } from '../../../arbitraries/lays.ts';

it('puts the hose that goes tight at the least share of the motion first, then by slack left', () => {
  const lays = [
    straightLay({ run: 'never-loose', rock: rockWith({ slackLeftMm: 9 }) }),
    straightLay({ run: 'late', rock: rockWith({ slackLeftMm: 1 }, { tightAt: { share: 1.2, extreme: 1 } }) }),
    straightLay({ run: 'carried', rock: rockWith({}, { carried: true }) }),
    straightLay({ run: 'never', rock: rockWith({ slackLeftMm: 5 }) }),
    straightLay({ run: 'early', rock: rockWith({ slackLeftMm: -2 }, { tightAt: { share: 0.4, extreme: 1 } }) }),
    straightLay({ run: 'still' }),
  ];
  expect(tightOrder(lays).map(({ lay }) => lay.run)).toEqual(['early', 'late', 'never', 'never-loose']);
});

it('counts what a hose lacks to reach as slack that is missing', () => {
  expect(leastSlackMm(rockWith({ slackLeftMm: 12.5 }))).toBe(12.5);
  expect(leastSlackMm(rockWith({ slackLeftMm: -4, outcome: 'too-short', missingMm: 6 }))).toBe(-6);
});

it('finds the extreme that is worst in something, where anything was measured', () => {
  const rock = rockWith({ twistDeg: 5 });
  expect(worstExtreme(rock, 'twist')?.twistDeg).toBe(5);
  expect(worstExtreme(rock, 'clearance')).toBeUndefined();
});
