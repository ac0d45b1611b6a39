import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import {
  nextLine,
  nextNumber,
  nextWord,
  nextWordOnLine,
  numberOfWord,
  restOfLine,
  textCursor,
  wordIs,
} from '../../../../shared/geometry/meshImport/textCursor.ts';

const cursorOn = (text: string) => textCursor(new TextEncoder().encode(text));

function numberIn(text: string): number {
  const cursor = cursorOn(text);
  nextWord(cursor);
  return numberOfWord(cursor);
}

describe('numberOfWord', () => {
  it.each([
    '0',
    '-0',
    '1',
    '+1.5',
    '.5',
    '5.',
    '-12.625',
    '1e3',
    '2.5E-7',
    '0.1',
    '123456789012345678',
    '1e400',
    '4.9e-324',
    '000012.50',
    '0.0000000000000000000000001',
  ])('%s, as the host reads it', (word) => {
    expect(numberIn(word)).toBe(Number(word));
  });

  it.each(['', '.', '+', '-', 'nan', 'NaN', 'Infinity', '1.2.3', '0x10', '1,5', '1e', '--1', '12a'])(
    '%j is none',
    (word) => {
      expect(numberIn(word)).toBeNaN();
    },
  );

  it('rounds any decimal as the host does', () => {
    const random = seededRandom(17);
    for (let n = 0; n < 20_000; n++) {
      const value = (random() - 0.5) * 10 ** Math.floor(random() * 12 - 6);
      const digits = 1 + Math.floor(random() * 17);
      for (const word of [value.toPrecision(digits), value.toFixed(Math.min(digits, 20)), String(value)])
        if (numberIn(word) !== Number(word)) throw new Error(word);
    }
  });
});

describe('the cursor', () => {
  it('goes by lines, over blank ones and every kind of line end', () => {
    const cursor = cursorOn('\n  v 1 2\r\n\r\nf\t3 4\rg  my part \nend');
    expect(nextWord(cursor) && wordIs(cursor, 'v')).toBe(true);
    expect([nextNumber(cursor), nextNumber(cursor), nextNumber(cursor)]).toEqual([1, 2, Number.NaN]);
    expect(nextLine(cursor) && wordIs(cursor, 'f')).toBe(true);
    expect(nextLine(cursor) && wordIs(cursor, 'g')).toBe(true);
    expect(restOfLine(cursor)).toBe('my part');
    expect(nextLine(cursor) && wordIs(cursor, 'end')).toBe(true);
    expect(nextWordOnLine(cursor)).toBe(false);
    expect(nextLine(cursor)).toBe(false);
  });

  it('joins lines at a backslash, passes a byte order mark, and minds no case', () => {
    const cursor = cursorOn('\ufeffFACET 1 \\\n 2 \\\r\n3\n4');
    expect(nextWord(cursor) && wordIs(cursor, 'facet')).toBe(true);
    expect([1, 2, 3].map(() => nextNumber(cursor))).toEqual([1, 2, 3]);
    expect(nextWordOnLine(cursor)).toBe(false);
  });
});
