import { expect, test } from 'vitest';
import { CRIMP_MEASURING, crimpVerdict } from '../../../../shared/document/proof/crimpVerdict.ts';

/** 24.90 mm, 0.15 either way. */
const END = { crimpFromMm: 24.75, crimpToMm: 25.05 };

test('25.17 and 25.12 against 24.90 +/- 0.15: 0.12 and 0.07 past, the hose is not tested', () => {
  const verdict = crimpVerdict(END, [25.17, 25.12]);
  expect(verdict.outcome).toBe('outside');
  expect(verdict.readings.map(({ pastMm }) => Number(pastMm.toFixed(6)))).toEqual([0.12, 0.07]);
  expect(verdict.words).toContain('not tested');
});

test('at its limits it is within, a hundredth past either is not, and one bad reading fails the end', () => {
  expect(crimpVerdict(END, [24.75, 25.05]).outcome).toBe('within');
  expect(crimpVerdict(END, [24.9, 25.06]).outcome).toBe('outside');
  expect(crimpVerdict(END, [24.74, 24.9]).outcome).toBe('outside');
});

test('without limits or without readings nothing is said to be good', () => {
  expect(crimpVerdict({}, [24.9]).outcome).toBe('not-known');
  expect(crimpVerdict(END, [])).toMatchObject({
    outcome: 'not-known',
    words: expect.stringContaining(CRIMP_MEASURING),
  });
});
