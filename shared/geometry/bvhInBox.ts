import type { Box } from './box.ts';
import { type Bvh, TREE_DEPTH } from './bvhTree.ts';

/**
 * Visits the slot of every triangle whose leaf's box meets the upright box, and of its neighbours in that leaf: all
 * triangles that reach into the box are among them, and a few that do not. The corners of slot s stand at
 * bvh.corners[9 s], its number in the mesh is bvh.triangles[s]. Order is that of the tree.
 */
export function visitInBox(bvh: Bvh, box: Box, visit: (slot: number) => void): void {
  if (bvh.triangles.length === 0) return;
  const pending = new Int32Array(TREE_DEPTH + 1);
  let count = 0;
  pending[count++] = bvh.root;
  while (count > 0) {
    const code = pending[--count]!;
    if (code < 0) {
      const first = ~code >> 2;
      for (let slot = first; slot <= first + (~code & 3); slot++) visit(slot);
      continue;
    }
    if (meets(bvh.boxes, 12 * code + 6, box)) pending[count++] = bvh.children[2 * code + 1]!;
    if (meets(bvh.boxes, 12 * code, box)) pending[count++] = bvh.children[2 * code]!;
  }
}

function meets(boxes: Float32Array, at: number, { min, max }: Box): boolean {
  return (
    boxes[at]! <= max[0] &&
    boxes[at + 1]! <= max[1] &&
    boxes[at + 2]! <= max[2] &&
    boxes[at + 3]! >= min[0] &&
    boxes[at + 4]! >= min[1] &&
    boxes[at + 5]! >= min[2]
  );
}
