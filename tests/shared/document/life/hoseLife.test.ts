import { expect, it } from 'vitest';
import { dueOn, hoseLife, isOverdue } from '../../../../shared/document/life/hoseLife.ts';

// kitplanes.com "Maintenance matters" 39: rubber 5 years in the engine bay, PTFE on condition; phenixindustries.com: methanol
// and race fuel rubber every couple of years; soundingsonline.com: marine cooling at most 4
it.each([
  ['ptfe-smooth', 'petrol', 'car', undefined],
  ['ptfe-convoluted', 'methanol', 'car', undefined],
  ['nbr', 'engine-oil', 'car', 5],
  ['nbr', 'engine-oil', undefined, 5],
  ['cpe', 'methanol', 'car', 2],
  ['nbr', 'e85', 'boat', 2],
  ['epdm', 'coolant', 'boat', 4],
  ['epdm', 'raw-water', 'boat', 4],
  ['epdm', 'coolant', 'car', 5],
] as const)('%s with %s in a %s lives %s years', (core, fluid, vehicle, years) => {
  expect(hoseLife(core, { fluid }, vehicle).years).toBe(years);
});

it('falls due on the same day or month of its last year, and is overdue the day or the month after', () => {
  expect(dueOn('2026-05', 5)).toBe('2031-05');
  expect(dueOn('2024-02-29', 2)).toBe('2026-02-29');
  expect(isOverdue('2031-05', '2031-05-31')).toBe(false);
  expect(isOverdue('2031-05', '2031-06-01')).toBe(true);
  expect(isOverdue('2031-05-12', '2031-05-12')).toBe(false);
  expect(isOverdue('2031-05-12', '2031-05-13')).toBe(true);
  expect(isOverdue('2026-02-29', '2026-03-01')).toBe(true);
});
