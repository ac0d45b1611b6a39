import { textOf } from './textCursor.ts';

/** The parts of a glTF's JSON that are looked at here. */
export interface GltfJson {
  asset?: { version?: string };
  buffers?: { uri?: string; byteLength?: number; extensions?: Record<string, { fallback?: boolean }> }[];
  bufferViews?: { buffer?: number; byteOffset?: number; byteLength?: number; extensions?: Record<string, unknown> }[];
  accessors?: { count?: number; bufferView?: number }[];
  meshes?: { primitives?: { material?: number; attributes?: Record<string, number>; targets?: unknown }[] }[];
  nodes?: { mesh?: number; extensions?: Record<string, unknown> }[];
  materials?: { name?: string }[];
  extensionsUsed?: string[];
  extensionsRequired?: string[];
  [rest: string]: unknown;
}

export interface GltfText {
  readonly json: GltfJson;
  /** the GLB's binary chunk */
  readonly binary: Uint8Array | undefined;
  readonly format: 'glb' | 'gltf';
}

/** 'glTF', 'JSON' and 'BIN' as the little-endian numbers that a GLB holds (Khronos glTF 2.0, section 4.4). */
const GLB_MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const BINARY_CHUNK = 0x004e4942;
const HEADER_BYTES = 12;
const CHUNK_HEADER_BYTES = 8;

export function isGlb(bytes: Uint8Array): boolean {
  return bytes.length >= HEADER_BYTES && viewOf(bytes).getUint32(0, true) === GLB_MAGIC;
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** The JSON and the binary chunk of a GLB, or the JSON of a glTF; or a sentence about what is wrong. */
export function jsonOfGltf(bytes: Uint8Array): GltfText | { readonly refusal: string } {
  return isGlb(bytes) ? chunksOf(bytes) : parsed(bytes, undefined, 'gltf');
}

function chunksOf(bytes: Uint8Array): GltfText | { readonly refusal: string } {
  const view = viewOf(bytes);
  const version = view.getUint32(4, true);
  if (version !== 2) return { refusal: `The file is a glTF of version ${version}; only version 2 can be read.` };
  if (view.getUint32(8, true) > bytes.length)
    return {
      refusal: `The file is cut short: its header promises ${view.getUint32(8, true)} bytes, there are ${bytes.length}. Copy or export it again.`,
    };
  let json: Uint8Array | undefined;
  let binary: Uint8Array | undefined;
  for (let at = HEADER_BYTES; at + CHUNK_HEADER_BYTES <= bytes.length; ) {
    const length = view.getUint32(at, true);
    const kind = view.getUint32(at + 4, true);
    const from = at + CHUNK_HEADER_BYTES;
    if (from + length > bytes.length) return { refusal: 'The file is damaged: a chunk reaches beyond its end.' };
    if (kind === JSON_CHUNK) json ??= bytes.subarray(from, from + length);
    if (kind === BINARY_CHUNK) binary ??= bytes.subarray(from, from + length);
    at = from + length;
  }
  return json
    ? parsed(json, binary, 'glb')
    : { refusal: 'The file is damaged: it has no description of its contents.' };
}

function parsed(
  text: Uint8Array,
  binary: Uint8Array | undefined,
  format: 'glb' | 'gltf',
): GltfText | { readonly refusal: string } {
  try {
    const json: unknown = JSON.parse(textOf(text));
    if (typeof json === 'object' && json !== null && 'asset' in json) return { json: json as GltfJson, binary, format };
    return { refusal: 'The file is JSON, but no glTF: it has no asset entry.' };
  } catch {
    return { refusal: 'The file is damaged: its description is not proper JSON.' };
  }
}

/** Extensions that change where triangles are and that are understood. */
const UNDERSTOOD = ['KHR_mesh_quantization', 'EXT_meshopt_compression'];
/** Extensions by their first words that concern looks, light and notes, never where a triangle is. */
const WITHOUT_GEOMETRY = [
  'KHR_materials_',
  'KHR_texture_',
  'EXT_texture_',
  'KHR_lights_',
  'EXT_lights_',
  'KHR_xmp',
  'KHR_animation_',
];
/** 2 GB: what the arrays of one file may unpack to. A larger number in a header is damage or an attack, no bay. */
const MOST_UNPACKED_BYTES = 2 ** 31;
const MOST_BYTES_AN_ELEMENT = 64;

/** A sentence about what makes the file unreadable here, found before anything is unpacked; undefined where nothing does. */
export function problemOfGltf(json: GltfJson, binary: Uint8Array | undefined): string | undefined {
  const used = new Set([...(json.extensionsUsed ?? []), ...(json.extensionsRequired ?? [])]);
  if (used.has('KHR_draco_mesh_compression'))
    return 'The file is compressed by Draco, which cannot be read. Export it again without that compression.';
  if (used.has('EXT_mesh_gpu_instancing'))
    return 'The file repeats parts by GPU instancing, which cannot be read. Export it again with instances written out.';
  const strange = (json.extensionsRequired ?? []).filter(
    (name) => !UNDERSTOOD.includes(name) && !WITHOUT_GEOMETRY.some((start) => name.startsWith(start)),
  );
  if (strange.length > 0) return `The file needs ${strange.join(', ')}, which cannot be read. Export it again without.`;
  const elsewhere = (json.buffers ?? []).find((buffer) => buffer.uri !== undefined && !buffer.uri.startsWith('data:'));
  if (elsewhere) return `The file keeps its shape in another file, ${elsewhere.uri}. Export it as one GLB file.`;
  return problemOfSizes(json, binary);
}

function problemOfSizes(json: GltfJson, binary: Uint8Array | undefined): string | undefined {
  const first = json.buffers?.[0];
  if (binary && first && first.uri === undefined && (first.byteLength ?? 0) > binary.length)
    return `The file is cut short: it promises ${first.byteLength} bytes of shape, there are ${binary.length}.`;
  let unpacked = 0;
  for (const view of json.bufferViews ?? []) unpacked += view.byteLength ?? 0;
  for (const accessor of json.accessors ?? []) {
    if (accessor.bufferView === undefined) unpacked += (accessor.count ?? 0) * MOST_BYTES_AN_ELEMENT;
  }
  return unpacked > MOST_UNPACKED_BYTES
    ? 'The file promises more than 2 GB of shape, more than it can hold.'
    : undefined;
}

/** The JSON without what has no place in a mesh: looks, light, movement. Names of materials stay, to name parts by. */
export function onlyGeometry(json: GltfJson): GltfJson {
  const kept: GltfJson = { ...json };
  for (const key of ['textures', 'images', 'samplers', 'animations', 'cameras', 'extensions']) delete kept[key];
  const understood = (name: string) => UNDERSTOOD.includes(name);
  kept.extensionsUsed = (json.extensionsUsed ?? []).filter(understood);
  kept.extensionsRequired = (json.extensionsRequired ?? []).filter(understood);
  if (json.materials) kept.materials = json.materials.map(({ name }) => (name === undefined ? {} : { name }));
  if (json.nodes) kept.nodes = json.nodes.map(({ camera: _camera, ...node }: Record<string, unknown>) => node);
  return kept;
}
