/** A seeded source of numbers in [0, 1): the same seed gives the same row on every host. */
export type RandomSource = () => number;

/**
 * sfc32 (Chris Doty-Humphrey's small fast counting generator, PractRand), seeded from one 32-bit number and stirred
 * twelve times. Passes PractRand to many terabytes by its author's account; ours is tested for range, mean and spread.
 */
export function seededRandom(seed: number): RandomSource {
  let a = 0x9e3779b9;
  let b = 0x243f6a88;
  let c = seed >>> 0;
  let counter = 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}
