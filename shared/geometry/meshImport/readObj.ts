import type { RawPart, RawResult } from './importedMesh.ts';
import {
  nextLine,
  nextNumber,
  nextWord,
  nextWordOnLine,
  numberOfWord,
  restOfLine,
  type TextCursor,
  textCursor,
  wordIs,
} from './textCursor.ts';

/** What was found so far; faces of one name are gathered, wherever in the file they stand. */
interface Reading {
  readonly positions: number[];
  readonly parts: Map<string, number[]>;
  readonly face: number[];
  object: string;
  group: string;
  badFaces: number;
  curves: number;
}

const FIRST_WORDS = ['v', 'vn', 'vt', 'f', 'o', 'g', 's', 'mtllib', 'usemtl'];
const SLASH = 47;
const HASH = 35;

/** Whether the first line that is no comment begins as an OBJ's lines do. */
export function looksLikeObj(bytes: Uint8Array): boolean {
  const cursor = textCursor(bytes);
  for (let more = nextWord(cursor); more; more = nextLine(cursor)) {
    if (bytes[cursor.wordFrom] === HASH) continue;
    return FIRST_WORDS.some((word) => wordIs(cursor, word)) && nextWordOnLine(cursor);
  }
  return false;
}

/**
 * Reads an OBJ: vertices and faces; objects and groups become parts (`object / group` where a file uses both), faces
 * before any name belong to `name`. Numbers counted from the end are understood. A face with more than three corners is
 * split round its first corner: right for convex ones. Texture, normals, materials and smoothing are passed over.
 */
export function readObj(bytes: Uint8Array, name: string): RawResult {
  const cursor = textCursor(bytes);
  const reading: Reading = {
    positions: [],
    parts: new Map(),
    face: [],
    object: '',
    group: '',
    badFaces: 0,
    curves: 0,
  };
  for (let more = nextWord(cursor); more; more = nextLine(cursor)) takeLine(reading, cursor, name);
  const { positions } = reading;
  const parts = [...reading.parts].map(([part, indices]): RawPart => ({ name: part, positions, indices }));
  if (parts.length === 0 && reading.badFaces === 0) return { refusal: refusalOf(reading) };
  return { raw: { format: 'obj', parts, warnings: warningsOf(reading) } };
}

function takeLine(reading: Reading, cursor: TextCursor, name: string): void {
  if (wordIs(cursor, 'v')) {
    for (let n = 0; n < 3; n++) reading.positions.push(nextNumber(cursor));
  } else if (wordIs(cursor, 'f') || wordIs(cursor, 'fo')) {
    takeFace(reading, cursor, name);
  } else if (wordIs(cursor, 'g')) {
    reading.group = restOfLine(cursor);
  } else if (wordIs(cursor, 'o')) {
    reading.object = restOfLine(cursor);
  } else if (wordIs(cursor, 'curv') || wordIs(cursor, 'surf') || wordIs(cursor, 'l')) {
    reading.curves++;
  }
}

function takeFace(reading: Reading, cursor: TextCursor, name: string): void {
  const { face, positions } = reading;
  const count = positions.length / 3;
  face.length = 0;
  let sound = true;
  while (nextWordOnLine(cursor)) {
    if (cursor.bytes[cursor.wordFrom] === HASH) break;
    const vertex = vertexOf(cursor, count);
    sound &&= Number.isInteger(vertex) && vertex >= 0 && vertex < count;
    face.push(vertex);
  }
  if (!sound || face.length < 3) {
    reading.badFaces++;
    return;
  }
  const indices = indicesOf(reading, name);
  for (let n = 1; n + 1 < face.length; n++) indices.push(face[0]!, face[n]!, face[n + 1]!);
}

/** The vertex that a face's word names: `7`, `7/1/2`, or `-1` for the latest; counted from 0. */
function vertexOf(cursor: TextCursor, count: number): number {
  let to = cursor.wordFrom;
  while (to < cursor.wordTo && cursor.bytes[to] !== SLASH) to++;
  cursor.wordTo = to;
  const number = numberOfWord(cursor);
  return number < 0 ? count + number : number - 1;
}

function indicesOf(reading: Reading, name: string): number[] {
  const { object, group, parts } = reading;
  const part = object && group && object !== group ? `${object} / ${group}` : group || object || name;
  const known = parts.get(part);
  if (known) return known;
  const indices: number[] = [];
  parts.set(part, indices);
  return indices;
}

function refusalOf(reading: Reading): string {
  if (reading.curves > 0)
    return 'The file holds only lines, curves or curved surfaces. Export it again with the surfaces as triangles.';
  if (reading.positions.length > 0)
    return 'The file holds points but no faces. Make a mesh of the scan first, then import that.';
  return 'The file holds no triangles.';
}

function warningsOf(reading: Reading): string[] {
  const warnings: string[] = [];
  if (reading.badFaces > 0)
    warnings.push(
      `${reading.badFaces === 1 ? '1 face' : `${reading.badFaces} faces`} left out: fewer than three corners, or a corner that is not in the file. The mesh may have holes there.`,
    );
  if (reading.curves > 0) warnings.push('Lines, curves and curved surfaces in the file were not read.');
  return warnings;
}
