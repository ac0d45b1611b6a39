import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';

const COUNT = 100_000;

describe('seededRandom', () => {
  it('gives the same row for the same seed, another for another', () => {
    const row = (seed: number) => Array.from({ length: 20 }, seededRandom(seed));
    expect(row(7)).toEqual(row(7));
    expect(row(7)).not.toEqual(row(8));
    expect(new Set(row(7)).size).toBe(20);
  });

  it.each([0, 1, 2, 0xffffffff])('seed %i: in [0, 1), with the mean and spread of an even row', (seed) => {
    const random = seededRandom(seed);
    let sum = 0;
    let squares = 0;
    for (let n = 0; n < COUNT; n++) {
      const value = random();
      if (value < 0 || value >= 1) throw new Error(`outside [0, 1): ${value}`);
      sum += value;
      squares += value * value;
    }
    const mean = sum / COUNT;
    // Five standard errors: 1/sqrt(12 n) of a mean, 1/sqrt(180 n) of a variance of 1/12.
    expect(Math.abs(mean - 0.5)).toBeLessThan(5 / Math.sqrt(12 * COUNT));
    expect(Math.abs(squares / COUNT - mean * mean - 1 / 12)).toBeLessThan(5 / Math.sqrt(180 * COUNT));
  });

  it('fills 64 bins evenly, and neighbours in the row are unrelated', () => {
    const random = seededRandom(11);
    const bins = new Float64Array(64);
    let product = 0;
    let before = random();
    for (let n = 0; n < COUNT; n++) {
      const value = random();
      bins[Math.floor(value * 64)]! += 1;
      product += (value - 0.5) * (before - 0.5);
      before = value;
    }
    const even = COUNT / 64;
    const chiSquared = bins.reduce((sum, count) => sum + (count - even) ** 2 / even, 0);
    // 63 degrees of freedom: mean 63, standard deviation sqrt(126) = 11.2; five of them either way.
    expect(Math.abs(chiSquared - 63)).toBeLessThan(5 * Math.sqrt(126));
    expect(Math.abs(product / COUNT)).toBeLessThan((5 * (1 / 12)) / Math.sqrt(COUNT));
  });
});
