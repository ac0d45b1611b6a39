import type { RawResult } from './importedMesh.ts';

/** 80 bytes of anything, a count, then 50 bytes a triangle: normal, three corners, two spare bytes. Little-endian. */
export const STL_HEADER_BYTES = 84;
export const STL_TRIANGLE_BYTES = 50;
const NORMAL_BYTES = 12;

/** The number of triangles that a binary STL's header promises. The file must hold a header. */
export function promisedTriangles(bytes: Uint8Array): number {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(80, true);
}

/** Whether the bytes are as many as their header promises: the sign of a sound binary STL, whatever its first word. */
export function hasBinaryStlSize(bytes: Uint8Array): boolean {
  if (bytes.length < STL_HEADER_BYTES) return false;
  return bytes.length === STL_HEADER_BYTES + STL_TRIANGLE_BYTES * promisedTriangles(bytes);
}

/**
 * Reads a binary STL. Normals are not used: the corners say more. A count that does not match a whole number of triangles
 * in the file is mended with a warning; a file that ends inside a triangle is refused, since what is missing could be
 * just what a hose must clear.
 */
export function readBinaryStl(bytes: Uint8Array, name: string): RawResult {
  if (bytes.length < STL_HEADER_BYTES)
    return { refusal: `The file is too short for an STL: ${bytes.length} bytes, where the header alone takes 84.` };
  const promised = promisedTriangles(bytes);
  const held = Math.floor((bytes.length - STL_HEADER_BYTES) / STL_TRIANGLE_BYTES);
  const over = (bytes.length - STL_HEADER_BYTES) % STL_TRIANGLE_BYTES;
  if (held === 0 && promised === 0) return { refusal: 'The file holds no triangles.' };
  if (over !== 0 && looksSavedAsText(bytes))
    return {
      refusal:
        'The file was damaged by being saved or sent as text: bytes were replaced by the sign for unreadable text. Export it again and copy it as a binary file.',
    };
  if (promised > held && over !== 0)
    return {
      refusal: `The file is cut short: its header promises ${promised} triangles, it holds ${held} and a part of one. Copy or export it again.`,
    };
  const warnings: string[] = [];
  const count = over === 0 ? held : promised;
  if (over === 0 && promised !== held)
    warnings.push(
      `The header promises ${promised} triangles, the file holds ${held}: all ${held} were read. Check that nothing is missing.`,
    );
  if (over !== 0) warnings.push(`What follows the ${promised} triangles that the header promises was not read.`);
  return { raw: { format: 'stl-binary', parts: [{ name, ...corners(bytes, count) }], warnings } };
}

function corners(bytes: Uint8Array, count: number): { positions: Float32Array; indices: Uint32Array } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const positions = new Float32Array(9 * count);
  const indices = new Uint32Array(3 * count);
  for (let triangle = 0; triangle < count; triangle++) {
    const from = STL_HEADER_BYTES + STL_TRIANGLE_BYTES * triangle + NORMAL_BYTES;
    for (let n = 0; n < 9; n++) positions[9 * triangle + n] = view.getFloat32(from + 4 * n, true);
    for (let n = 0; n < 3; n++) indices[3 * triangle + n] = 3 * triangle + n;
  }
  return { positions, indices };
}

/** One replacement sign (EF BF BD) in so many bytes: by chance it is one in 16 million. */
const BYTES_PER_SIGN_AT_MOST = 10_000;

function looksSavedAsText(bytes: Uint8Array): boolean {
  let signs = 0;
  for (let at = 0; at + 2 < bytes.length; at++) {
    if (bytes[at] === 0xef && bytes[at + 1] === 0xbf && bytes[at + 2] === 0xbd) signs++;
  }
  return signs * BYTES_PER_SIGN_AT_MOST > bytes.length;
}
