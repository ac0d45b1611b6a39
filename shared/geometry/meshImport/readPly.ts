import type { RawResult } from './importedMesh.ts';
import { type PlyElement, type PlyProperty, readPlyHeader } from './plyHeader.ts';
import { type PlyNumbers, plyNumbers } from './plyNumbers.ts';

const CUT_SHORT = 'The PLY is cut short: it ends before all that its header promises. Copy or export it again.';
const FACE_LISTS = ['vertex_indices', 'vertex_index'];

interface Reading {
  positions: Float64Array;
  readonly indices: number[];
  badFaces: number;
  strips: number;
}

/**
 * Reads a PLY, text or binary of either byte order: the places of its vertices and its faces, as one part called `name`. A face with more than
 * three corners is split round its first corner: right for convex ones. Colours, normals and whatever else stands beside them are passed over.
 * A file that ends before its header's count is refused, since what is missing could be just what a hose must clear.
 */
export function readPly(bytes: Uint8Array, name: string): RawResult {
  const header = readPlyHeader(bytes);
  if ('refusal' in header) return header;
  const numbers = plyNumbers(bytes.subarray(header.bodyAt), header.coding);
  const reading: Reading = { positions: new Float64Array(0), indices: [], badFaces: 0, strips: 0 };
  for (const element of header.elements) if (!takeElement(reading, element, numbers)) return { refusal: CUT_SHORT };
  const { positions, indices } = reading;
  if (indices.length === 0 && reading.badFaces === 0) return { refusal: refusalOf(reading) };
  return { raw: { format: 'ply', parts: [{ name, positions, indices }], warnings: warningsOf(reading) } };
}

/** Takes all of an element's kind; false where the file ends in it. */
function takeElement(reading: Reading, element: PlyElement, numbers: PlyNumbers): boolean {
  if (element.name === 'vertex') return takeVertices(reading, element, numbers);
  if (element.name === 'tristrips') reading.strips = element.count;
  const corners: number[] = [];
  const isFace = element.name === 'face';
  for (let i = 0; i < element.count; i++) {
    for (const property of element.properties) {
      const list = isFace && FACE_LISTS.includes(property.name) ? corners : null;
      if (!takeProperty(property, numbers, list)) return false;
    }
    if (isFace) addFace(reading, corners);
  }
  return true;
}

function takeVertices(reading: Reading, { count, properties }: PlyElement, numbers: PlyNumbers): boolean {
  const [first] = properties;
  if (first === undefined || !numbers.holds(count, first.type)) return count === 0;
  reading.positions = new Float64Array(3 * count);
  const axes = properties.map(({ name }) => ['x', 'y', 'z'].indexOf(name));
  for (let vertex = 0; vertex < count; vertex++) {
    for (const [i, property] of properties.entries()) {
      if (property.countType !== undefined) {
        if (!takeProperty(property, numbers, null)) return false;
        continue;
      }
      const value = numbers.next(property.type);
      const axis = axes[i]!;
      if (axis >= 0) reading.positions[3 * vertex + axis] = value;
    }
  }
  // A number that is none may stand in a file; one past its end is none as well.
  return numbers.holds(0, first.type);
}

/** Takes one property, a list into `list` where one is given; false where the file ends in it. */
function takeProperty({ type, countType }: PlyProperty, numbers: PlyNumbers, list: number[] | null): boolean {
  if (countType === undefined) return !Number.isNaN(numbers.next(type)) || numbers.holds(0, type);
  const length = numbers.next(countType);
  if (!(length >= 0) || !numbers.holds(length, type)) return false;
  if (list !== null) list.length = 0;
  for (let n = 0; n < length; n++) {
    const value = numbers.next(type);
    list?.push(value);
  }
  return true;
}

function addFace(reading: Reading, corners: readonly number[]): void {
  const count = reading.positions.length / 3;
  const isSound = corners.length >= 3 && corners.every((v) => Number.isInteger(v) && v >= 0 && v < count);
  if (!isSound) {
    reading.badFaces++;
    return;
  }
  for (let n = 1; n + 1 < corners.length; n++) reading.indices.push(corners[0]!, corners[n]!, corners[n + 1]!);
}

function refusalOf({ positions, strips }: Reading): string {
  if (strips > 0) return 'The PLY holds strips of triangles, which are not read. Export it again with faces.';
  if (positions.length > 0)
    return 'The file holds points but no faces. Make a mesh of the scan first, then import that.';
  return 'The file holds no triangles.';
}

function warningsOf({ badFaces, strips }: Reading): string[] {
  const warnings: string[] = [];
  if (badFaces > 0)
    warnings.push(
      `${badFaces === 1 ? '1 face' : `${badFaces} faces`} left out: fewer than three corners, or a corner that is not in the file. The mesh may have holes there.`,
    );
  if (strips > 0) warnings.push('Strips of triangles in the file were not read.');
  return warnings;
}
