import { expect, it } from 'vitest';
import { monthsBetween, monthsOn } from '../../../../shared/document/life/months.ts';

it('counts months as a calendar does', () => {
  expect(monthsBetween('2026-05-12', '2027-05-12')).toBe(12);
  expect(monthsBetween('2026-05-12', '2026-05-12')).toBe(0);
  expect(monthsBetween('2026-11-30', '2027-01-30')).toBe(2);
});

it('grows with every day, over ends of months and years', () => {
  const days = Array.from({ length: 800 }, (_, i) =>
    new Date(Date.UTC(2023, 10, 25) + i * 86_400_000).toISOString().slice(0, 10),
  );
  const months = days.map((day) => monthsBetween('2023-11-25', day));
  for (const [i, value] of months.entries()) if (i > 0) expect(value).toBeGreaterThan(months[i - 1] as number);
});

it('goes on by whole months, to the last day where there is no such day', () => {
  expect(monthsOn('2026-05-12', 12)).toBe('2027-05-12');
  expect(monthsOn('2026-08-31', 6)).toBe('2027-02-28');
  expect(monthsOn('2027-08-31', 6)).toBe('2028-02-29');
  expect(monthsOn('2026-12-01', 1)).toBe('2027-01-01');
  expect(monthsOn('2026-01-15', -1)).toBe('2025-12-15');
});
