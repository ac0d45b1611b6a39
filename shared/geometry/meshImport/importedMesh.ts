import type { Problem } from '../../base/result.ts';
import type { TriMesh } from '../triMesh.ts';

export type MeshFormat = 'stl-binary' | 'stl-text' | 'ply' | 'obj' | 'glb' | 'gltf';

/** A mesh as its file holds it: the file's own numbers, unit and up direction; see `placeMesh`. */
export interface ImportedMesh {
  /** Numbers as in the file with the file's own transforms applied; equal vertices welded; no triangle without area. */
  readonly mesh: TriMesh;
  readonly format: MeshFormat;
  /** What was left out, mended or is doubtful; `path` is the file's name. */
  readonly warnings: readonly Problem[];
}

/** What a format's reader finds, before bad triangles are taken out. */
export interface RawMesh {
  readonly format: MeshFormat;
  readonly parts: readonly RawPart[];
  /** Sentences about the file. */
  readonly warnings: readonly string[];
}

export interface RawPart {
  /** as in the file; may be empty or taken twice */
  readonly name: string;
  /** x, y, z a vertex; may be one array that several parts share */
  readonly positions: ArrayLike<number>;
  /** three vertex numbers a triangle, all within `positions` */
  readonly indices: ArrayLike<number>;
}

/** A reader's answer: what it found, or one sentence why there is nothing to take. */
export type RawResult = { readonly raw: RawMesh } | { readonly refusal: string };
