import type { Part } from './part.ts';
/**
 * The parts as one GLB: a node and a mesh each, float32 positions, no normals (the reader makes them), metres, +Y up as
 * glTF has it. Bay (x, y, z) in mm becomes (x, z, -y) / 1000. The same parts give the same bytes.
 */
export declare function writeGlb(name: string, parts: readonly Part[]): Promise<Uint8Array>;
