import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import {
  NEXT_TO_ZERO_MM,
  newDoubles,
  newFloats,
  newIntegers,
  SparseNumbers,
} from '../../../shared/base/sparseNumbers.ts';

describe('sparse numbers', () => {
  it.each([2, 5, 12])('hold what was put there, and 0 elsewhere, in blocks of 2 to the %d', (blockBits) => {
    const random = seededRandom(blockBits);
    const numbers = new SparseNumbers(newDoubles, blockBits);
    const expected = new Map<number, number>();
    for (let i = 0; i < 30_000; i++) {
      // Near the start, and scattered over a range of which most is never touched.
      const index = Math.floor(random() * (i % 2 === 0 ? 5000 : 4e6));
      const value = random();
      const place = numbers.placeFor(index);
      if (i % 3 === 0) {
        numbers.numbers[place] = value;
        expected.set(index, value);
      } else expect(numbers.numbers[place]).toBe(expected.get(index) ?? 0);
    }
    for (const [index, value] of expected) expect(numbers.numbers[numbers.placeFor(index)]).toBe(value);
  });

  it('hold those of one block beside each other', () => {
    const numbers = new SparseNumbers(newIntegers, 4);
    const first = numbers.placeFor(160);
    numbers.placeFor(7);
    for (let k = 0; k < 16; k++) expect(numbers.placeFor(160 + k)).toBe(first + k);
  });

  it('tell a length of nothing from what was not asked, in float32 too', () => {
    const numbers = new SparseNumbers(newFloats, 4);
    const place = numbers.placeFor(3);
    numbers.numbers[place] = NEXT_TO_ZERO_MM;
    expect(numbers.numbers[place]).toBeGreaterThan(0);
  });
});
