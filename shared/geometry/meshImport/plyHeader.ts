import { textOf } from './textCursor.ts';

/** Bytes of each number type, by its old and its new name. */
const TYPE_BYTES = new Map<string, number>([
  ['char', 1],
  ['int8', 1],
  ['uchar', 1],
  ['uint8', 1],
  ['short', 2],
  ['int16', 2],
  ['ushort', 2],
  ['uint16', 2],
  ['int', 4],
  ['int32', 4],
  ['uint', 4],
  ['uint32', 4],
  ['float', 4],
  ['float32', 4],
  ['double', 8],
  ['float64', 8],
]);

export interface PlyProperty {
  readonly name: string;
  readonly type: string;
  /** of a list: the type of its length */
  readonly countType?: string;
}

export interface PlyElement {
  readonly name: string;
  readonly count: number;
  readonly properties: readonly PlyProperty[];
}

export type PlyCoding = 'ascii' | 'binary_little_endian' | 'binary_big_endian';

export interface PlyHeader {
  readonly coding: PlyCoding;
  readonly elements: readonly PlyElement[];
  /** where what it describes begins, bytes */
  readonly bodyAt: number;
}

const CODINGS: readonly PlyCoding[] = ['ascii', 'binary_little_endian', 'binary_big_endian'];
const NEWLINE = 10;
const RETURN = 13;
const LAST_LINE = 'end_header';
/** Bytes. Longer headers are comments run wild, or no header. */
const LONGEST_HEADER = 1 << 20;

/** Whether a file begins as a PLY does: the word on a line of its own. */
export function isPly(bytes: Uint8Array): boolean {
  return textOf(bytes.subarray(0, 3)) === 'ply' && (bytes[3] === NEWLINE || bytes[3] === RETURN);
}

/** Bytes of one number of a type; undefined for what is no type. */
export function bytesOfType(type: string): number | undefined {
  return TYPE_BYTES.get(type);
}

/** What a PLY's header says (Greg Turk's format of 1994, version 1.0), or a sentence why it says nothing that can be followed. */
export function readPlyHeader(bytes: Uint8Array): PlyHeader | { readonly refusal: string } {
  const end = headerEnd(bytes);
  if (end === undefined) return { refusal: 'The PLY has no end of its header: the file is cut short, or no PLY.' };
  const lines = textOf(bytes.subarray(0, end)).split(/\r\n|\n|\r/);
  const elements: { name: string; count: number; properties: PlyProperty[] }[] = [];
  let coding: PlyCoding | undefined;
  for (const line of lines) {
    const words = line.trim().split(/\s+/);
    if (words[0] === 'format') coding = CODINGS.find((known) => known === words[1]);
    else if (words[0] === 'element') elements.push({ name: words[1] ?? '', count: Number(words[2]), properties: [] });
    else if (words[0] === 'property') {
      const property = propertyOf(words.slice(1));
      const element = elements.at(-1);
      if (property === undefined || element === undefined) return refusedLine(line);
      element.properties.push(property);
    }
  }
  if (coding === undefined)
    return { refusal: 'The PLY does not say how it is written: its “format” line is missing or unknown.' };
  const wrong = elements.find(({ count }) => !Number.isInteger(count) || count < 0);
  if (wrong !== undefined) return { refusal: `The PLY does not say how many “${wrong.name}” it holds.` };
  return { coding, elements, bodyAt: end };
}

function refusedLine(line: string): { readonly refusal: string } {
  return { refusal: `A line of the PLY’s header cannot be followed: “${line.trim().slice(0, 80)}”.` };
}

/** What a property's line says after its first word. */
function propertyOf(words: readonly string[]): PlyProperty | undefined {
  const isList = words[0] === 'list';
  const [countType, type, name] = isList ? words.slice(1) : [undefined, ...words];
  if (type === undefined || name === undefined || !TYPE_BYTES.has(type)) return undefined;
  if (!isList) return { name, type };
  return countType !== undefined && TYPE_BYTES.has(countType) ? { name, type, countType } : undefined;
}

/** The byte after the header's last line. */
function headerEnd(bytes: Uint8Array): number | undefined {
  let from = 0;
  for (let at = 0; at < Math.min(bytes.length, LONGEST_HEADER); at++) {
    if (bytes[at] !== NEWLINE && bytes[at] !== RETURN) continue;
    const isLast = at - from === LAST_LINE.length && textOf(bytes.subarray(from, at)) === LAST_LINE;
    if (isLast) return bytes[at] === RETURN && bytes[at + 1] === NEWLINE ? at + 2 : at + 1;
    from = at + 1;
  }
  return undefined;
}
