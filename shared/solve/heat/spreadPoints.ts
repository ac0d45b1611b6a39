import { seededRandom } from '../../base/random.ts';

/**
 * Number `i` of an even spread of points over the unit cube of `dimensions`, into `out`. Points in a row fill the cube
 * far more evenly than thrown ones, and every one by itself is uniform over the seeds.
 */
export type SpreadPoints = (i: number, out: Float64Array) => void;

/**
 * An even spread that starts at a place drawn by `seed`: steps by the powers of 1/g, g^(dimensions + 1) = g + 1, the
 * golden ratio's kin (a Kronecker sequence; M. Roberts, "The unreasonable effectiveness of quasirandom sequences", 2018),
 * shifted at random (Cranley and Patterson 1976), so that an average over it is unbiased.
 */
export function spreadPoints(dimensions: number, seed: number): SpreadPoints {
  const random = seededRandom(seed);
  const shifts = Float64Array.from({ length: dimensions }, random);
  const g = rootOf(dimensions);
  const steps = Float64Array.from({ length: dimensions }, (_, j) => g ** -(j + 1));
  return (i, out) => {
    for (let j = 0; j < dimensions; j++) {
      const at = shifts[j]! + i * steps[j]!;
      out[j] = at - Math.floor(at);
    }
  };
}

/** g > 1 with g^(dimensions + 1) = g + 1, by the iteration that contracts to it. */
function rootOf(dimensions: number): number {
  let g = 2;
  for (let step = 0; step < ROOT_STEPS; step++) g = (1 + g) ** (1 / (dimensions + 1));
  return g;
}

/** The iteration shrinks its error to a third or less a step: 40 reach the last digit. */
const ROOT_STEPS = 40;
