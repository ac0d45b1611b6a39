type Numbers = Float32Array | Float64Array | Int32Array;

/** Of what is held at first: the list of blocks, and the numbers in them. */
const FIRST_BLOCKS = 256;
const FIRST_NUMBERS = 4096;

/**
 * Numbers by index, a whole number from 0 to below 2^31, all 0 at first, for a long range of which only scattered parts are
 * touched: room is made by the block. An array for the whole range would be cleared, and would press the collector of garbage
 * to work, for nothing.
 */
export class Sparse<A extends Numbers> {
  /** Those of all blocks that were touched; another array after `at` made room. */
  numbers: A;
  private used = 0;
  /** by block: where its numbers begin + 1; 0 = not yet touched */
  private blocks = new Int32Array(FIRST_BLOCKS);
  private readonly newNumbers: (length: number) => A;
  private readonly blockBits: number;

  /** blockBits: a block holds 2 to the power of this, 2 to 12: few where the touched indices lie singly, many where they lie together. */
  constructor(newNumbers: (length: number) => A, blockBits: number) {
    this.newNumbers = newNumbers;
    this.blockBits = blockBits;
    this.numbers = newNumbers(FIRST_NUMBERS);
  }

  /** Where in `numbers` an index is held. So many indices beside each other as a power of two, the first a multiple of it, are held beside each other. */
  at(index: number): number {
    const block = index >> this.blockBits;
    const begin = block < this.blocks.length ? (this.blocks[block] as number) : 0;
    return (begin === 0 ? this.begun(block) : begin - 1) + (index & ((1 << this.blockBits) - 1));
  }

  private begun(block: number): number {
    const begin = this.used;
    this.used += 1 << this.blockBits;
    if (this.used > this.numbers.length) {
      const wider = this.newNumbers(2 * this.numbers.length);
      wider.set(this.numbers);
      this.numbers = wider;
    }
    if (block >= this.blocks.length) {
      const longer = new Int32Array(Math.max(2 * this.blocks.length, block + 1));
      longer.set(this.blocks);
      this.blocks = longer;
    }
    this.blocks[block] = begin + 1;
    return begin;
  }
}

export function newFloats(length: number): Float32Array {
  return new Float32Array(length);
}

export function newDoubles(length: number): Float64Array {
  return new Float64Array(length);
}

export function newIntegers(length: number): Int32Array {
  return new Int32Array(length);
}
