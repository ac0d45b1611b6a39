import { Document, Logger, NodeIO, Primitive } from '@gltf-transform/core';
import { describe, expect, it } from 'vitest';
import { boxOfMesh } from '../../../../shared/geometry/box.ts';
import { type ImportedMesh, openMesh } from '../../../../shared/geometry/meshImport/index.ts';
import { triangleCount } from '../../../../shared/geometry/triMesh.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

async function opened(fileName: string, bytes: Uint8Array | string): Promise<ImportedMesh> {
  const result = await openMesh(fileName, typeof bytes === 'string' ? bytesOf(bytes) : bytes);
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join(' '));
  return result.value;
}

async function refused(fileName: string, bytes: Uint8Array | string): Promise<string> {
  const result = await openMesh(fileName, typeof bytes === 'string' ? bytesOf(bytes) : bytes);
  if (result.ok) throw new Error('was opened');
  expect(result.problems.every((problem) => problem.path === fileName)).toBe(true);
  return result.problems[0]!.message;
}

const namesOf = ({ mesh }: ImportedMesh) => mesh.parts.map((part) => part.name);
const says = ({ warnings }: ImportedMesh) => warnings.map((warning) => warning.message).join(' ');

/** A binary STL: each triangle nine numbers. */
function binaryStl(triangles: readonly (readonly number[])[], promised = triangles.length): Uint8Array {
  const bytes = new Uint8Array(84 + 50 * triangles.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, promised, true);
  triangles.forEach((corners, t) => {
    corners.forEach((value, n) => {
      view.setFloat32(84 + 50 * t + 12 + 4 * n, value, true);
    });
  });
  return bytes;
}

const one = [0, 0, 0, 1, 0, 0, 0, 1, 0];
const two = [1, 0, 0, 1, 1, 0, 0, 1, 0];

describe('STL', () => {
  it('welds corners that are equal, 0 and -0 too', async () => {
    const read = await opened('bay.stl', binaryStl([one, two.map((value) => (value === 0 ? -0 : value))]));
    expect(read.mesh.positions).toHaveLength(4 * 3);
    expect(read.warnings).toEqual([]);
    expect(namesOf(read)).toEqual(['bay']);
  });

  it('leaves out what is not finite or has no area, and says how many', async () => {
    const bad = [0, 0, Number.NaN, 1, 0, 0, 0, 1, 0];
    const far = [0, 0, Infinity, 1, 0, 0, 0, 1, 0];
    const line = [0, 0, 0, 1, 1, 1, 3, 3, 3];
    const point = [0, 0, 0, 0, 0, 0, 1, 0, 0];
    const read = await opened('bay.stl', binaryStl([one, bad, far, line, point, two]));
    expect(triangleCount(read.mesh)).toBe(2);
    expect(says(read)).toMatch(/2 triangles were left out: a corner is not a finite number/);
    expect(says(read)).toMatch(/2 triangles were left out: no area/);
    expect(await refused('bay.stl', binaryStl([bad]))).toMatch(/no triangle that can be used/);
  });

  it('refuses a file cut short inside a triangle, however large its promise', async () => {
    const whole = binaryStl([one, two], 0xffffffff);
    expect(await refused('bay.stl', whole.slice(0, -7))).toMatch(/cut short: its header promises 4294967295/);
    expect(says(await opened('bay.stl', whole))).toMatch(/promises 4294967295 triangles, the file holds 2/);
    expect(await refused('bay.stl', whole.slice(0, 60))).toMatch(/too short/);
    expect(await refused('bay.stl', 'solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1')).toMatch(
      /cut short/,
    );
  });

  it('makes a part of each solid, in any case of letters and layout', async () => {
    const facet = 'FACET NORMAL 0 0 1 OUTER LOOP VERTEX 0 0 0 VERTEX 1e1 0 0 VERTEX 0 .5 0 ENDLOOP ENDFACET';
    const read = await opened(
      'two.stl',
      `SOLID pipe\n${facet}\nENDSOLID\nsolid pipe\n${facet}\n${facet}\nendsolid pipe\n`,
    );
    expect(namesOf(read)).toEqual(['pipe', 'pipe 2']);
    expect(read.mesh.parts.map((part) => part.triangleCount)).toEqual([1, 2]);
    expect(boxOfMesh(read.mesh)).toEqual({ min: [0, 0, 0], max: [10, 0.5, 0] });
  });

  it('warns of a mesh rounded away by its distance from the origin', async () => {
    const far = one.map((value, n) => value + (n % 3 === 0 ? 5e5 : 0));
    expect(says(await opened('far.stl', binaryStl([far])))).toMatch(/far from its origin/);
  });
});

describe('OBJ', () => {
  const square = 'v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\n';

  it('splits polygons, counts from the end, passes over texture and normals', async () => {
    const read = await opened(
      'bay.obj',
      `# made by hand\nmtllib a.mtl\n${square}vn 0 0 1\nf 1//1 2//1 3//1 4//1\nf -4/9 -3/9 -2/9\n`,
    );
    expect([...read.mesh.indices]).toEqual([0, 1, 2, 0, 2, 3, 0, 1, 2]);
    expect(namesOf(read)).toEqual(['bay']);
  });

  it('gathers faces of one name into one part; object and group together name it', async () => {
    const read = await opened(
      'b.obj',
      `${square}g a\nf 1 2 3\ng b\nf 1 2 3\nf 1 3 4\ng a\nf 1 3 4\no engine\nf 1 2 4\n`,
    );
    expect(namesOf(read)).toEqual(['a', 'b', 'engine / a']);
    expect(read.mesh.parts.map((part) => part.triangleCount)).toEqual([2, 2, 1]);
  });

  it('leaves out faces whose corners are not there, and says how many', async () => {
    const read = await opened('b.obj', `${square}f 1 2 3\nf 1 2 9\nf 0 1 2\nf 1 x 2\nf 1 2\nf 1 2 -7\n`);
    expect(triangleCount(read.mesh)).toBe(1);
    expect(says(read)).toMatch(/5 faces left out/);
  });

  it('counts only triangles with a damaged vertex', async () => {
    const read = await opened('b.obj', `${square}v nan 0 0\nv 1e99 0 0\nf 1 2 3\nf 1 2 5\nf 1 2 6\n`);
    expect(says(read)).toMatch(/^2 triangles were left out: a corner is not a finite number/);
  });

  it('refuses points and curves with what to do instead', async () => {
    expect(await refused('b.obj', square)).toMatch(/points but no faces/);
    expect(await refused('b.obj', `${square}l 1 2 3\n`)).toMatch(/only lines, curves/);
  });
});

/** A GLB written by another library: two nodes on one mesh, the second moved, turned a quarter about z and doubled. */
async function twoNodes(change?: (document: Document) => void): Promise<Uint8Array> {
  const document = new Document();
  document.setLogger(new Logger(Logger.Verbosity.SILENT));
  const buffer = document.createBuffer();
  const position = document.createAccessor().setType('VEC3').setBuffer(buffer);
  position.setArray(new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0]));
  const primitive = document.createPrimitive().setAttribute('POSITION', position);
  primitive.setMode(Primitive.Mode.TRIANGLE_STRIP!);
  const mesh = document.createMesh('plate').addPrimitive(primitive);
  const child = document
    .createNode('pipe')
    .setMesh(mesh)
    .setTranslation([10, 0, 5])
    .setRotation([0, 0, Math.SQRT1_2, Math.SQRT1_2])
    .setScale([2, 2, 2]);
  document.createScene().addChild(document.createNode('').setMesh(mesh).addChild(child));
  change?.(document);
  return new NodeIO().writeBinary(document);
}

describe('GLB and glTF', () => {
  it('applies node transforms and reads strips with their winding', async () => {
    const read = await opened('bay.glb', await twoNodes());
    expect(namesOf(read)).toEqual(['plate', 'pipe']);
    expect(triangleCount(read.mesh)).toBe(4);
    expect([...read.mesh.indices].slice(0, 6)).toEqual([0, 1, 2, 1, 3, 2]);
    const pipe = boxOfMesh(read.mesh, new Uint32Array([2, 3]));
    expect(pipe.min.map((value) => Math.round(value * 1e4) / 1e4 + 0)).toEqual([8, 0, 5]);
    expect(pipe.max.map((value) => Math.round(value * 1e4) / 1e4)).toEqual([10, 2, 5]);
    expect(read.warnings).toEqual([]);
  });

  it('reads a glTF whose buffer is in it, and refuses one whose buffer is elsewhere', async () => {
    const io = new NodeIO();
    const { json, resources } = await io.writeJSON(await io.readBinary(await twoNodes()));
    const [uri, bytes] = Object.entries(resources)[0]!;
    expect(await refused('bay.gltf', JSON.stringify(json))).toContain(`another file, ${uri}`);
    json.buffers![0]!.uri = `data:application/octet-stream;base64,${Buffer.from(bytes).toString('base64')}`;
    const read = await opened('bay.gltf', JSON.stringify(json));
    expect(read.format).toBe('gltf');
    expect(triangleCount(read.mesh)).toBe(4);
  });

  it('says that points, lines and moving shapes were passed over', async () => {
    const bytes = await twoNodes((document) => {
      const mesh = document.getRoot().listMeshes()[0]!;
      const position = mesh.listPrimitives()[0]!.getAttribute('POSITION')!;
      mesh.listPrimitives()[0]!.addTarget(document.createPrimitiveTarget().setAttribute('POSITION', position));
      mesh.addPrimitive(document.createPrimitive().setAttribute('POSITION', position).setMode(Primitive.Mode.POINTS!));
    });
    const read = await opened('bay.glb', bytes);
    expect(says(read)).toMatch(/can change shape/);
    expect(says(read)).toMatch(/Points and lines/);
    expect(triangleCount(read.mesh)).toBe(4);
  });

  it('names the parts of a mesh with several materials', async () => {
    const bytes = await twoNodes((document) => {
      const mesh = document.getRoot().listMeshes()[0]!;
      const first = mesh.listPrimitives()[0]!.setMaterial(document.createMaterial('steel'));
      mesh.addPrimitive(first.clone().setMaterial(document.createMaterial('rubber')));
    });
    expect(namesOf(await opened('bay.glb', bytes))).toEqual([
      'plate / steel',
      'plate / rubber',
      'pipe / steel',
      'pipe / rubber',
    ]);
  });

  it('refuses what it cannot read, and says why', async () => {
    const bytes = await twoNodes();
    expect(await refused('bay.glb', bytes.slice(0, -9))).toMatch(/cut short/);
    expect(await refused('bay.glb', bytesOf('glTF is not enough'))).toMatch(/version/);
    expect(await refused('bay.gltf', '{"asset": {"version": "2.0"')).toMatch(/not proper JSON/);
    expect(await refused('bay.gltf', '{"hello": 1}')).toMatch(/no asset entry/);
    const asset = { version: '2.0' };
    const text = (rest: object) => JSON.stringify({ asset, ...rest });
    expect(await refused('a.gltf', text({}))).toMatch(/no triangles/);
    expect(await refused('a.gltf', text({ extensionsRequired: ['KHR_draco_mesh_compression'] }))).toMatch(/Draco/);
    expect(await refused('a.gltf', text({ extensionsRequired: ['XYZ_shape'] }))).toMatch(/needs XYZ_shape/);
    expect(await refused('a.gltf', text({ accessors: [{ count: 1e12, type: 'VEC3', componentType: 5126 }] }))).toMatch(
      /2 GB/,
    );
    expect(await refused('a.gltf', text({ scenes: [{ nodes: [7] }] }))).toMatch(/damaged/);
  });

  it('refuses triangles that name vertices which are not there', async () => {
    const bytes = await twoNodes((document) => {
      const primitive = document.getRoot().listMeshes()[0]!.listPrimitives()[0]!;
      const indices = document.createAccessor().setArray(new Uint16Array([0, 1, 99]));
      primitive.setIndices(indices.setBuffer(document.getRoot().listBuffers()[0]!));
    });
    expect(await refused('bay.glb', bytes)).toMatch(/vertex 99 of 4/);
  });
});

describe('whatever else comes in', () => {
  it.each([
    ['scan.ply', 'ply\nformat ascii 1.0\n', /no end of its header/],
    ['part.step', 'ISO-10303-21;\nHEADER;', /STEP/],
    ['part.3mf', 'PK\x03\x04abc', /3MF/],
    ['notes.txt', 'dear diary', /no mesh that can be read/],
    ['notes.glb', 'dear diary', /no glTF/],
    ['notes.stl', 'dear diary', /too short/],
    ['nothing', '', /empty/],
  ])('%s is refused with a sentence', async (fileName, text, sentence) => {
    expect(await refused(fileName, text)).toMatch(sentence);
  });

  it('refuses UTF-16', async () => {
    expect(await refused('b.obj', new Uint8Array([0xff, 0xfe, 118, 0, 32, 0]))).toMatch(/UTF-16/);
  });

  it('goes by what a file holds, not by its extension', async () => {
    expect((await opened('bay.obj', binaryStl([one]))).format).toBe('stl-binary');
    expect((await opened('bay.stl', 'v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n')).format).toBe('obj');
    expect((await opened('bay.stl', await twoNodes())).format).toBe('glb');
  });
});
