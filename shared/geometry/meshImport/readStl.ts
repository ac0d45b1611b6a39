import type { RawResult } from './importedMesh.ts';
import { hasBinaryStlSize, readBinaryStl } from './stlBinary.ts';
import { readTextStl } from './stlText.ts';
import { nextWord, textCursor, wordIs } from './textCursor.ts';

/** How many bytes of a text STL are looked at to tell it from a binary one whose header says `solid`. */
const SAMPLE_BYTES = 4096;
const LAST_CONTROL_BYTE = 8;

/** Whether the bytes read as text that begins with `solid`. */
export function looksLikeTextStl(bytes: Uint8Array): boolean {
  const cursor = textCursor(bytes);
  if (!nextWord(cursor) || !wordIs(cursor, 'solid')) return false;
  return bytes.subarray(0, SAMPLE_BYTES).every((byte) => byte > LAST_CONTROL_BYTE);
}

/** Reads an STL, binary where its size says so, text where it begins with `solid` and reads as text, else binary. */
export function readStl(bytes: Uint8Array, name: string): RawResult {
  const isText = !hasBinaryStlSize(bytes) && looksLikeTextStl(bytes);
  return isText ? readTextStl(bytes, name) : readBinaryStl(bytes, name);
}
