import { expect, test } from 'vitest';
import { findingNumbers, formatInUnit, isYesOrNo } from '../../../../shared/sheets/format/index.ts';
import { FINDINGS } from '../../../arbitraries/reports.ts';

const base = FINDINGS[0]!;

test('a miss by a hair of a lower limit does not print as a pass', () => {
  const numbers = findingNumbers({ ...base, unit: 'mm', limit: 76.2, measured: 76.19, margin: -0.01 });
  expect(numbers.measured.startsWith('76.1 mm')).toBe(true);
  expect(numbers.margin.startsWith('-0.1 mm')).toBe(true);
});
test('a miss by a hair of an upper limit does not print as a pass', () => {
  const numbers = findingNumbers({ ...base, unit: 'deg', limit: 15, measured: 15.01, margin: -0.01 });
  expect(numbers).toEqual({ limit: '15°', measured: '15.1°', margin: '-0.1°' });
});
test('a margin of temperature is a difference, not a temperature', () => {
  const numbers = findingNumbers({ ...base, unit: 'C', limit: 150, measured: 145, margin: 5 });
  expect(numbers).toEqual({ limit: '150 °C (302 °F)', measured: '145 °C (293 °F)', margin: '5 °C' });
});
test('units of the rule pack read as the trade writes them', () => {
  expect(formatInUnit(0.05, 'ratio')).toBe('5.0 %');
  expect(formatInUnit(10, 'dash')).toBe('-10');
  expect(formatInUnit(2, 'count')).toBe('2');
  expect(formatInUnit(1.5, 'hose diameters')).toBe('1.50 hose diameters');
  expect(formatInUnit(1e-7, 'S/m')).toBe('1.0e-7 S/m');
  expect(formatInUnit(689.4757293, 'kPa')).toBe('689 kPa (100 psi)');
});
test('a rule without a size is told from one that has a size or counts', () => {
  expect(isYesOrNo({ ...base, unit: 'count', limit: 1, measured: 0, margin: -1 })).toBe(true);
  expect(isYesOrNo({ ...base, unit: 'count', limit: 0, measured: 1, margin: -1 })).toBe(true);
  expect(isYesOrNo({ ...base, unit: 'count', limit: 1, measured: 0.5, margin: -0.5 })).toBe(true);
  expect(isYesOrNo({ ...base, unit: 'count', limit: 1, measured: 2, margin: -1 })).toBe(false);
  expect(isYesOrNo({ ...base, unit: 'deg C', limit: 1, measured: 0, margin: -1 })).toBe(false);
  expect(isYesOrNo({ ...base, unit: 'kPa', limit: 0, measured: 0.5, margin: -0.5 })).toBe(false);
  expect(isYesOrNo({ ...base, unit: 'mm', limit: 1, measured: 0, margin: -1 })).toBe(false);
});
