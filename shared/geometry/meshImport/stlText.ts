import type { RawPart, RawResult } from './importedMesh.ts';
import { nextWord, numberOfWord, restOfLine, type TextCursor, textCursor, wordIs } from './textCursor.ts';

/** The corners of the facet in hand and what was found so far. */
interface Reading {
  readonly parts: { name: string; positions: number[] }[];
  readonly facet: number[];
  inFacet: boolean;
  inSolid: boolean;
  withMoreCorners: number;
  withFewerCorners: number;
}

/**
 * Reads a text STL: each `solid` becomes a part, named after its `solid` line or `name`. Only corners are taken; normals
 * may be wrong or missing. A facet with more than three corners is split as a fan, one with fewer is left out, both with
 * a warning. A file that ends inside a facet is refused, since what is missing could be just what a hose must clear.
 */
export function readTextStl(bytes: Uint8Array, name: string): RawResult {
  const cursor = textCursor(bytes);
  const reading: Reading = {
    parts: [],
    facet: [],
    inFacet: false,
    inSolid: false,
    withMoreCorners: 0,
    withFewerCorners: 0,
  };
  while (nextWord(cursor)) takeWord(reading, cursor, name);
  if (reading.inFacet)
    return { refusal: 'The file is cut short: it ends in the middle of a facet. Copy or export it again.' };
  const parts = reading.parts.filter((part) => part.positions.length > 0).map(asRawPart);
  if (parts.length === 0 && reading.withFewerCorners === 0) return { refusal: 'The file holds no triangles.' };
  return { raw: { format: 'stl-text', parts, warnings: warningsOf(reading) } };
}

function takeWord(reading: Reading, cursor: TextCursor, name: string): void {
  if (wordIs(cursor, 'vertex')) {
    for (let n = 0; n < 3; n++) reading.facet.push(nextWord(cursor) ? numberOfWord(cursor) : Number.NaN);
  } else if (wordIs(cursor, 'facet')) {
    if (reading.inFacet) finishFacet(reading, name);
    reading.inFacet = true;
  } else if (wordIs(cursor, 'endfacet')) {
    finishFacet(reading, name);
  } else if (wordIs(cursor, 'solid')) {
    reading.parts.push({ name: restOfLine(cursor) || name, positions: [] });
    reading.inSolid = true;
  } else if (wordIs(cursor, 'endsolid')) {
    restOfLine(cursor);
    reading.inSolid = false;
  }
}

function finishFacet(reading: Reading, name: string): void {
  const { facet, parts } = reading;
  if (parts.length === 0) parts.push({ name, positions: [] });
  const { positions } = parts[parts.length - 1]!;
  if (facet.length < 9) reading.withFewerCorners++;
  if (facet.length > 9) reading.withMoreCorners++;
  for (let at = 3; at + 5 < facet.length; at += 3) {
    positions.push(facet[0]!, facet[1]!, facet[2]!);
    for (let n = 0; n < 6; n++) positions.push(facet[at + n]!);
  }
  facet.length = 0;
  reading.inFacet = false;
}

function asRawPart(part: { name: string; positions: number[] }): RawPart {
  const indices = new Uint32Array(part.positions.length / 3);
  for (let n = 0; n < indices.length; n++) indices[n] = n;
  return { name: part.name, positions: part.positions, indices };
}

function warningsOf(reading: Reading): string[] {
  const warnings: string[] = [];
  const { withMoreCorners, withFewerCorners, inSolid } = reading;
  if (withMoreCorners > 0)
    warnings.push(
      `${facets(withMoreCorners)} with more than three corners: split into triangles round the first corner.`,
    );
  if (withFewerCorners > 0)
    warnings.push(
      `${facets(withFewerCorners)} with fewer than three corners: left out. The mesh may have holes there.`,
    );
  if (inSolid) warnings.push('The last solid has no end: the file may be cut short. Check that nothing is missing.');
  return warnings;
}

function facets(count: number): string {
  return count === 1 ? '1 facet' : `${count} facets`;
}
