import { expect, it, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { lengthText, readLength } from '../../../../shared/document/parts/readLength.ts';

const mmOf = (text: string, unit: 'mm' | 'in' = 'mm'): number | string => {
  const read = readLength(text, unit);
  return read.ok ? Number(read.mm.toFixed(9)) : read.message;
};

// 25.4 mm an inch, by hand: 1 3/16 in = 30.1625 mm.
test.each([
  ['30.2', 30.2],
  [' 30,2 ', 30.2],
  ['30.2mm', 30.2],
  ['.5', 0.5],
  ['-4', -4],
  ['1 3/16', 30.1625],
  ['1-3/16"', 30.1625],
  ['1 3/16 in', 30.1625],
  ['1.1875 in', 30.1625],
  ['3/16', 4.7625],
  ['-3/16 in', -4.7625],
  ['2″', 50.8],
  ['0', 0],
])('%j is %d mm', (text, mm) => {
  expect(mmOf(text)).toBe(mm);
});

it('reads a bare number in the unit of the window, a fraction always as inches', () => {
  expect(mmOf('2', 'in')).toBe(50.8);
  expect(mmOf('2 mm', 'in')).toBe(2);
  expect(mmOf('1/2', 'mm')).toBe(12.7);
});

test.each(['', 'x', '1 2', '3/0', '1/2 mm', '12 cm', '1.2.3', '1..2', 'in'])('refuses %j', (text) => {
  expect(readLength(text, 'mm').ok).toBe(false);
});

it('shows a length so that it reads back', () => {
  expect([
    lengthText(30.1625, 'in'),
    lengthText(30.2, 'in'),
    lengthText(50.8, 'in'),
    lengthText(-4.7625, 'in'),
  ]).toEqual(['1 3/16', '1.188976', '2', '-3/16']);
  expect([lengthText(0, 'in'), lengthText(-0, 'mm'), lengthText(30.1625, 'mm')]).toEqual(['0', '0', '30.1625']);
  const random = seededRandom(7);
  for (let i = 0; i < 300; i++) {
    const mm = (random() - 0.3) * 400;
    for (const unit of ['mm', 'in'] as const) {
      const back = readLength(lengthText(mm, unit), unit);
      expect(back.ok && Math.abs(back.mm - mm)).toBeLessThan(1e-4);
    }
  }
});
