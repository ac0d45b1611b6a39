type Numbers = Float32Array | Float64Array | Int32Array;

/** Of what is held at first: the list of blocks, and the numbers in them. */
const FIRST_BLOCKS = 256;
const FIRST_NUMBERS = 4096;

/**
 * Numbers by index, a whole number from 0 to below 2^31, all 0 at first, for a long range of which only scattered parts are
 * touched: room is made by the block. An array for the whole range would be cleared, and would press the collector of garbage
 * to work, for nothing.
 */
export class SparseNumbers<A extends Numbers> {
  private held: A;
  private used = 0;
  /** by block: where its numbers begin + 1; 0 = not yet touched */
  private blocks = new Int32Array(FIRST_BLOCKS);
  private readonly newNumbers: (length: number) => A;
  private readonly blockBits: number;

  /** blockBits: a block holds 2 to the power of this, 2 to 12: few where the touched indices lie singly, many where they lie together. */
  constructor(newNumbers: (length: number) => A, blockBits: number) {
    this.newNumbers = newNumbers;
    this.blockBits = blockBits;
    this.held = newNumbers(FIRST_NUMBERS);
  }

  /** Those of all blocks that were touched. It is another array after `placeFor` made room: to be asked for after it. */
  get numbers(): A {
    return this.held;
  }

  /** Where in `numbers` an index is held, from now on where it was not yet. So many indices beside each other as a power of two, the first a multiple of it, are held beside each other. */
  placeFor(index: number): number {
    const block = index >> this.blockBits;
    const begin = block < this.blocks.length ? (this.blocks[block] as number) : 0;
    return (begin === 0 ? this.begun(block) : begin - 1) + (index & ((1 << this.blockBits) - 1));
  }

  private begun(block: number): number {
    const begin = this.used;
    this.used += 1 << this.blockBits;
    if (this.used > this.held.length) {
      const wider = this.newNumbers(2 * this.held.length);
      wider.set(this.held);
      this.held = wider;
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

/** Kept in place of a length of 0 mm, where 0 stands for what was not asked yet: exact in float32 too, and no length that anybody can tell from none. */
export const NEXT_TO_ZERO_MM = 1e-30;

/** What the numbers may be made of: float32, float64, or whole numbers of 32 bits. */
export function newFloats(length: number): Float32Array {
  return new Float32Array(length);
}

export function newDoubles(length: number): Float64Array {
  return new Float64Array(length);
}

export function newIntegers(length: number): Int32Array {
  return new Int32Array(length);
}
