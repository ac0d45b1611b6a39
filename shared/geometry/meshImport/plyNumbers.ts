import { bytesOfType, type PlyCoding } from './plyHeader.ts';
import { nextWord, numberOfWord, textCursor } from './textCursor.ts';

/** The numbers of a PLY's body, one after the other. */
export interface PlyNumbers {
  /** The next number, of a type that `bytesOfType` knows; NaN once the file is at its end. */
  next(type: string): number;
  /** Whether so many numbers of this type can still be there. */
  holds(count: number, type: string): boolean;
}

export function plyNumbers(body: Uint8Array, coding: PlyCoding): PlyNumbers {
  return coding === 'ascii' ? numbersOfText(body) : numbersOfBytes(body, coding === 'binary_little_endian');
}

function numbersOfText(body: Uint8Array): PlyNumbers {
  const cursor = textCursor(body);
  return {
    next: () => (nextWord(cursor) ? numberOfWord(cursor) : Number.NaN),
    // A digit and a blank are the least that a number takes.
    holds: (count) => 2 * count <= body.length - cursor.at + 1,
  };
}

function numbersOfBytes(body: Uint8Array, little: boolean): PlyNumbers {
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength);
  let at = 0;
  const read: Readonly<Record<string, (from: number) => number>> = {
    char: (from) => view.getInt8(from),
    uchar: (from) => view.getUint8(from),
    short: (from) => view.getInt16(from, little),
    ushort: (from) => view.getUint16(from, little),
    int: (from) => view.getInt32(from, little),
    uint: (from) => view.getUint32(from, little),
    float: (from) => view.getFloat32(from, little),
    double: (from) => view.getFloat64(from, little),
  };
  const named = new Map(Object.entries(read));
  for (const [name, old] of NEW_NAMES) named.set(name, read[old]!);
  return {
    next: (type) => {
      const from = at;
      at += bytesOfType(type) ?? 0;
      return at > body.length ? Number.NaN : (named.get(type)?.(from) ?? Number.NaN);
    },
    holds: (count, type) => at + count * (bytesOfType(type) ?? 0) <= body.length,
  };
}

const NEW_NAMES = [
  ['int8', 'char'],
  ['uint8', 'uchar'],
  ['int16', 'short'],
  ['uint16', 'ushort'],
  ['int32', 'int'],
  ['uint32', 'uint'],
  ['float32', 'float'],
  ['float64', 'double'],
] as const;
