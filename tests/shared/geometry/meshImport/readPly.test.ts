import { describe, expect, it } from 'vitest';
import type { RawMesh } from '../../../../shared/geometry/meshImport/importedMesh.ts';
import { openMesh } from '../../../../shared/geometry/meshImport/index.ts';
import { readPly } from '../../../../shared/geometry/meshImport/readPly.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function read(bytes: Uint8Array | string): RawMesh {
  const result = readPly(typeof bytes === 'string' ? bytesOf(bytes) : bytes, 'scan');
  if ('refusal' in result) throw new Error(result.refusal);
  return result.raw;
}

function refusal(bytes: Uint8Array | string): string {
  const result = readPly(typeof bytes === 'string' ? bytesOf(bytes) : bytes, 'scan');
  return 'refusal' in result ? result.refusal : 'was read';
}

const HEADER = `ply
format ascii 1.0
comment a scanner's own words
element vertex 4
property float x
property float y
property float z
property uchar red
element face 1
property list uchar int vertex_indices
end_header
`;
const SQUARE = `${HEADER}0 0 0 255
1 0 0 255
1 1 0.5 0
0 1 0 0
4 0 1 2 3
`;

/** The same square in binary: counts before the vertices are doubles, there is a list among the vertex's properties, and faces come in shorts. */
function binary(little: boolean): Uint8Array {
  const header = bytesOf(`ply\r
format binary_${little ? 'little' : 'big'}_endian 1.0\r
element vertex 4\r
property double x\r
property float32 y\r
property list uint8 int16 marks\r
property float z\r
element face 2\r
property uchar flags\r
property list int32 uint16 vertex_index\r
element edge 1\r
property int vertex1\r
property int vertex2\r
end_header\r
`);
  const body = new DataView(new ArrayBuffer(400));
  let at = 0;
  const put = (
    bytes: number,
    set: 'setFloat64' | 'setFloat32' | 'setInt16' | 'setUint16' | 'setInt32' | 'setUint8',
    value: number,
  ): void => {
    if (set === 'setUint8') body.setUint8(at, value);
    else body[set](at, value, little);
    at += bytes;
  };
  const corners = [
    [0, 0, 0],
    [1, 0, 0],
    [1, 1, 0.5],
    [0, 1, 0],
  ];
  for (const [i, [x, y, z]] of corners.entries()) {
    put(8, 'setFloat64', x!);
    put(4, 'setFloat32', y!);
    put(1, 'setUint8', i);
    for (let n = 0; n < i; n++) put(2, 'setInt16', -n);
    put(4, 'setFloat32', z!);
  }
  for (const face of [
    [0, 1, 2],
    [0, 2, 3],
  ]) {
    put(1, 'setUint8', 9);
    put(4, 'setInt32', face.length);
    for (const corner of face) put(2, 'setUint16', corner);
  }
  put(4, 'setInt32', 0);
  put(4, 'setInt32', 1);
  return new Uint8Array([...header, ...new Uint8Array(body.buffer, 0, at)]);
}

const PLACES = [0, 0, 0, 1, 0, 0, 1, 1, 0.5, 0, 1, 0];

describe('a PLY', () => {
  it.each([
    ['text', SQUARE],
    ['text with Windows line ends', SQUARE.replaceAll('\n', '\r\n')],
    ['little-endian', binary(true)],
    ['big-endian', binary(false)],
  ])('is read as its vertices and its faces: %s', (_, bytes) => {
    const { format, parts, warnings } = read(bytes);
    expect([format, parts.length, parts[0]?.name]).toEqual(['ply', 1, 'scan']);
    expect(Array.from(parts[0]?.positions ?? [])).toEqual(PLACES);
    expect(parts[0]?.indices).toEqual([0, 1, 2, 0, 2, 3]);
    expect(warnings).toEqual([]);
  });

  it('is known by its first line, whatever it is called', async () => {
    const opened = await openMesh('scan.stl', bytesOf(SQUARE));
    expect(opened.ok && opened.value.format).toBe('ply');
  });

  it('leaves faces out that name no vertex or too few, and says how many', () => {
    const { parts, warnings } = read(
      SQUARE.replace('element face 1', 'element face 3').replace('4 0 1 2 3', '3 0 1 2\n3 0 1 9\n2 0 1'),
    );
    expect(parts[0]?.indices).toEqual([0, 1, 2]);
    expect(warnings.join()).toContain('2 faces left out');
  });

  it.each([
    ['cut off in its faces', SQUARE.slice(0, -5), /cut short/],
    ['cut off in its vertices', `${HEADER}0 0 0 255\n1 0`, /cut short/],
    ['binary and cut off', binary(true).subarray(0, -9), /cut short/],
    ['of more vertices than a file of its size holds', HEADER.replace('vertex 4', 'vertex 4000000000'), /cut short/],
    [
      'a cloud of points',
      SQUARE.replace('element face 1', 'element face 0').replace('4 0 1 2 3\n', ''),
      /points but no faces/,
    ],
    ['of strips', SQUARE.replace('element face', 'element tristrips'), /strips/],
    ['without a format', SQUARE.replace('format ascii 1.0\n', ''), /how it is written/],
    ['of an unknown type', SQUARE.replace('property float x', 'property quad x'), /“property quad x”/],
    ['of a count that is none', SQUARE.replace('vertex 4', 'vertex many'), /how many “vertex”/],
  ])('is refused when it is %s', (_, bytes, sentence) => {
    expect(refusal(bytes)).toMatch(sentence);
  });
});
