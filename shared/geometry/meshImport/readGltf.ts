import { type JSONDocument, Logger, PlatformIO, Verbosity } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import { MeshoptDecoder } from 'meshoptimizer/decoder';
import { partsOfScene } from './gltfScene.ts';
import { type GltfJson, jsonOfGltf, onlyGeometry, problemOfGltf } from './gltfText.ts';
import type { RawResult } from './importedMesh.ts';

/** Reads what is handed to it and nothing else: no disk, no network. */
class MemoryIO extends PlatformIO {
  override async readURI(uri: string): Promise<never> {
    throw new Error(`the file keeps part of itself in another file, ${uri}`);
  }
  override resolve(_base: string, path: string): string {
    return path;
  }
  override dirname(): string {
    return '';
  }
}

/**
 * Reads a GLB, or a glTF whose buffers are in the file itself, with glTF-Transform: node transforms applied, every
 * triangle of the default scene, quantised and meshopt-compressed data understood. A node's mesh becomes a part; where it
 * has several materials, a part for each. Shapes that move (morphs, skins, animation) are read as they stand at rest.
 */
export async function readGltf(bytes: Uint8Array): Promise<RawResult> {
  const text = jsonOfGltf(bytes);
  if ('refusal' in text) return text;
  const refusal = problemOfGltf(text.json, text.binary);
  if (refusal !== undefined) return { refusal };
  try {
    return await readDocument(text.json, text.binary, text.format);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { refusal: `The file is damaged or no proper glTF: ${reason}` };
  }
}

async function readDocument(
  json: GltfJson,
  binary: Uint8Array | undefined,
  format: 'glb' | 'gltf',
): Promise<RawResult> {
  await MeshoptDecoder.ready;
  const io = new MemoryIO()
    .setLogger(new Logger(Verbosity.SILENT))
    .registerExtensions([EXTMeshoptCompression, KHRMeshQuantization])
    .registerDependencies({ 'meshopt.decoder': MeshoptDecoder });
  const resources: Record<string, Uint8Array<ArrayBuffer>> = binary ? { '@glb.bin': new Uint8Array(binary) } : {};
  const document = await io.readJSON({ json: onlyGeometry(json) as unknown as JSONDocument['json'], resources });
  const root = document.getRoot();
  const scene = root.getDefaultScene() ?? root.listScenes()[0];
  const { parts, warnings } = partsOfScene(
    scene ? scene.listChildren() : root.listNodes().filter((n) => !n.getParentNode()),
  );
  if (root.listScenes().length > 1) warnings.push('The file holds several scenes: only its first-named one was read.');
  if (parts.length === 0) return { refusal: ['The file holds no triangles.', ...warnings].join(' ') };
  return { raw: { format, parts, warnings } };
}
