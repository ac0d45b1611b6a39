import { expect, test } from 'vitest';
import { formatClockHour, formatDegrees, formatTurn } from '../../../../shared/sheets/format/index.ts';

test('0 and 360 are one direction and print as one', () => {
  for (const same of [0, 360, 720, -360, 359.97, -0.04, 0.04, 1e-13, 360 - 1e-13])
    expect(formatDegrees(same)).toBe('0°');
});
test('whole degrees are bare, others have one decimal', () => {
  expect(formatDegrees(270)).toBe('270°');
  expect(formatDegrees(-90)).toBe('270°');
  expect(formatDegrees(247.34)).toBe('247.3°');
  expect(formatTurn(-2.5)).toBe('-2.5°');
  expect(formatTurn(3)).toBe('3°');
});
test('every hour of the clock has its name', () => {
  const names = Array.from({ length: 12 }, (_, i) => formatClockHour(i * 30));
  expect(names).toEqual([12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11].map((h) => `${h} o'clock`));
});
test('between the hours it says which, and carries the degrees', () => {
  expect(formatClockHour(247.34)).toBe("247.3° clockwise from 12 (between 8 and 9 o'clock)");
  expect(formatClockHour(345)).toBe("345° clockwise from 12 (between 11 and 12 o'clock)");
  expect(formatClockHour(15)).toBe("15° clockwise from 12 (between 12 and 1 o'clock)");
});
