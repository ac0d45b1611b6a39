import { Document, type Material, WebIO } from '@gltf-transform/core';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Finish, Part } from './part.ts';

const COLOURS: Record<Finish, readonly [colour: Vec3, metallic: number, roughness: number]> = {
  cast: [[0.55, 0.56, 0.57], 0.7, 0.6],
  machined: [[0.75, 0.76, 0.78], 0.9, 0.35],
  steel: [[0.35, 0.37, 0.4], 0.8, 0.5],
  rust: [[0.42, 0.27, 0.18], 0.6, 0.75],
  black: [[0.08, 0.08, 0.09], 0.1, 0.7],
  composite: [[0.16, 0.2, 0.22], 0.0, 0.5],
  glass: [[0.72, 0.7, 0.6], 0.0, 0.6],
  brass: [[0.72, 0.58, 0.3], 0.9, 0.4],
  wire: [[0.1, 0.1, 0.12], 0.0, 0.8],
};

/**
 * The parts as one GLB: a node and a mesh each, float32 positions, no normals (the reader makes them), metres, +Y up as
 * glTF has it. Bay (x, y, z) in mm becomes (x, z, -y) / 1000. The same parts give the same bytes.
 */
export async function writeGlb(name: string, parts: readonly Part[]): Promise<Uint8Array> {
  const document = new Document();
  document.getRoot().getAsset().generator = 'Hosewright example bay';
  const buffer = document.createBuffer();
  const scene = document.createScene(name);
  const materials = new Map<Finish, Material>();
  for (const { name: partName, finish, solid } of parts) {
    const material = materials.get(finish) ?? createMaterial(document, finish);
    materials.set(finish, material);
    const positions = new Float32Array(solid.points.flatMap(([x, y, z]) => [x / 1000, z / 1000, -y / 1000]));
    const indices = solid.points.length < 65536 ? new Uint16Array(solid.indices) : new Uint32Array(solid.indices);
    const primitive = document
      .createPrimitive()
      .setAttribute('POSITION', document.createAccessor().setType('VEC3').setArray(positions).setBuffer(buffer))
      .setIndices(document.createAccessor().setType('SCALAR').setArray(indices).setBuffer(buffer))
      .setMaterial(material);
    const mesh = document.createMesh(partName).addPrimitive(primitive);
    scene.addChild(document.createNode(partName).setMesh(mesh));
  }
  document.getRoot().setDefaultScene(scene);
  return new WebIO().writeBinary(document);
}

function createMaterial(document: Document, finish: Finish): Material {
  const [colour, metallic, roughness] = COLOURS[finish];
  return document
    .createMaterial(finish)
    .setBaseColorFactor([...colour, 1])
    .setMetallicFactor(metallic)
    .setRoughnessFactor(roughness);
}
