/**
 * A hierarchy of boxes over the triangles of a mesh, in flat typed arrays: structured-cloneable and transferable.
 * An inner node holds the boxes of its two children, so that a visit reads one place in memory and tests both.
 *
 * Corners are the mesh's own float32 numbers, copied unrounded; boxes are minima and maxima of them. Differences are
 * taken in float64 inside the query, so a mesh far from the origin loses nothing here that it had not lost already.
 */
export interface Bvh {
  /** Child code of the whole tree; see `children`. */
  readonly root: number;
  /** 12 an inner node: min x y z, max x y z of the first child's box, then of the second's; mm */
  readonly boxes: Float32Array;
  /** 2 an inner node. >= 0: number of an inner node. < 0: a leaf, ~(first slot * 4 + slots - 1), 1 to 4 slots. */
  readonly children: Int32Array;
  /** 9 a slot: the corners a, b, c of its triangle, mm. Slots of one leaf stand together. */
  readonly corners: Float32Array;
  /** the number in the mesh of each slot's triangle */
  readonly triangles: Uint32Array;
}

/** Most triangles in a leaf: two bits of a leaf's code. */
export const LEAF_MOST = 4;

/** Levels of the tree at most: below SAH_DEPTH every split halves the count, and 2^32 triangles end the arrays. */
export const SAH_DEPTH = 60;
export const TREE_DEPTH = SAH_DEPTH + 32;

/** Bytes that a tree holds, for a memory budget. */
export function bvhBytes(bvh: Bvh): number {
  return bvh.boxes.byteLength + bvh.children.byteLength + bvh.corners.byteLength + bvh.triangles.byteLength;
}
