import { expect, it } from 'vitest';
import { CARD_SECTIONS, isAsked } from '../../../../renderer/panels/parts/cardSections.ts';
import { columnsOf, PART_KINDS } from '../../../../shared/document/parts/columns.ts';

it('has every column of every kind on its card once, but for the id', () => {
  for (const kind of PART_KINDS) {
    const keys = CARD_SECTIONS[kind].flatMap((section) => section.keys);
    expect(new Set(keys).size).toBe(keys.length);
    const columns = columnsOf(kind).map(({ key }) => key);
    expect([kind, [...keys, 'id'].sort()]).toEqual([kind, [...columns].sort()]);
  }
});

it('asks always what a row cannot be without', () => {
  for (const kind of PART_KINDS)
    for (const { key, optional } of columnsOf(kind))
      if (!optional) expect([key, isAsked(key, {})]).toEqual([key, true]);
  expect(isAsked('turnFromDeg', { turning: 'swivel' })).toBe(false);
  expect(isAsked('turnFromDeg', { turning: 'range' })).toBe(true);
  expect(isAsked('turnFromDeg', { turning: 'swivel', turnFromDeg: 3 })).toBe(true);
  expect(isAsked('branchToSeatMm', { form: 'tee' })).toBe(true);
  expect(isAsked('crimpDie', { joint: 'push-on' })).toBe(false);
  expect(isAsked('innerOlive', { joint: 'clamped' })).toBe(false);
  expect(isAsked('innerOlive', { joint: 'screw-together' })).toBe(true);
});
