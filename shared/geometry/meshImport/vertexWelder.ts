/** Gathers vertices, giving equal ones (to the last bit of float32; -0 is 0) one number. */
export interface VertexWelder {
  /** The number of the vertex at x, y, z. */
  numberOf(x: number, y: number, z: number): number;
  /** x, y, z of all vertices so far, in order of their numbers */
  positions(): Float32Array<ArrayBuffer>;
}

const FIRST_CAPACITY = 1024;

/** A welder on an open hash table: O(1) a vertex, two slots a vertex at least. */
export function newVertexWelder(): VertexWelder {
  const place = new Float32Array(3);
  const bits = new Uint32Array(place.buffer);
  let stored = new Float32Array(3 * FIRST_CAPACITY);
  let slots = new Int32Array(2 * FIRST_CAPACITY);
  let count = 0;

  const slotOf = (): number => {
    const mask = slots.length - 1;
    let slot = hashBits(bits) & mask;
    for (;;) {
      const number = slots[slot]! - 1;
      if (number < 0) return slot;
      if (stored[3 * number] === place[0] && stored[3 * number + 1] === place[1] && stored[3 * number + 2] === place[2])
        return slot;
      slot = (slot + 1) & mask;
    }
  };
  const grow = (): void => {
    const larger = new Float32Array(2 * stored.length);
    larger.set(stored);
    stored = larger;
    slots = new Int32Array(2 * slots.length);
    for (let number = 0; number < count; number++) {
      place.set(stored.subarray(3 * number, 3 * number + 3));
      slots[slotOf()] = number + 1;
    }
  };
  return {
    numberOf(x, y, z) {
      if (3 * count === stored.length) grow();
      place[0] = x + 0;
      place[1] = y + 0;
      place[2] = z + 0;
      const slot = slotOf();
      if (slots[slot] === 0) {
        stored.set(place, 3 * count);
        slots[slot] = ++count;
      }
      return slots[slot]! - 1;
    },
    positions: () => stored.slice(0, 3 * count),
  };
}

/** Mixes the 96 bits of a vertex (multiply-and-fold, constants of the 32-bit golden ratio and MurmurHash3's finisher). */
function hashBits(bits: Uint32Array): number {
  let h = Math.imul(bits[0]!, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15) ^ bits[1]!, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13) ^ bits[2]!, 0xc2b2ae35);
  return h ^ (h >>> 16);
}
