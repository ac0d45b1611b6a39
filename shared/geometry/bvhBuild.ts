import { stopIfCancelled, UNWATCHED, type Watch } from '../base/watch.ts';
import { type Bvh, LEAF_MOST, SAH_DEPTH } from './bvhTree.ts';
import { type TriMesh, triangleCount } from './triMesh.ts';

const BINS = 16;
/** Numbers a bin: min x y z, max x y z, triangles. */
const BIN = 7;

/** What the build works on: boxes of the triangles by position in the list, the list in its present order, nodes so far. */
interface Work {
  readonly bounds: Float32Array;
  readonly order: Uint32Array;
  readonly boxes: Float32Array;
  readonly children: Int32Array;
  nodes: number;
  readonly watch: Watch;
}

/** Where to cut a range: triangles whose centre falls in `bin` or below, on an axis, go to the front. */
interface Cut {
  axis: number;
  bin: number;
  low: number;
  perMm: number;
}

/**
 * A box hierarchy over all triangles of a mesh, or over the numbers in `triangles` only (may be empty; repeated numbers
 * do no harm). Binned surface area heuristic (Wald 2007, "On fast construction of SAH-based bounding volume
 * hierarchies"), 16 bins on each axis, leaves of at most four. O(n log n).
 * Coordinates must be finite. Throws `Cancelled` when the watch says so.
 */
export function buildBvh(mesh: TriMesh, triangles?: Uint32Array, watch: Watch = UNWATCHED): Bvh {
  const list = triangles ?? everyTriangle(mesh);
  const count = list.length;
  const most = Math.max(0, count - 1);
  const work: Work = {
    bounds: boundsOf(mesh, list),
    order: everyNumber(count),
    boxes: new Float32Array(12 * most),
    children: new Int32Array(2 * most),
    nodes: 0,
    watch,
  };
  const root = count === 0 ? 0 : buildRange(work, 0, count, 0);
  return {
    root,
    boxes: work.boxes.slice(0, 12 * work.nodes),
    children: work.children.slice(0, 2 * work.nodes),
    corners: cornersInOrder(mesh, list, work.order),
    triangles: work.order.map((at) => list[at]!),
  };
}

function everyNumber(count: number): Uint32Array {
  const numbers = new Uint32Array(count);
  for (let i = 0; i < count; i++) numbers[i] = i;
  return numbers;
}

function everyTriangle(mesh: TriMesh): Uint32Array {
  return everyNumber(triangleCount(mesh));
}

function boundsOf(mesh: TriMesh, list: Uint32Array): Float32Array {
  const { positions, indices } = mesh;
  const bounds = new Float32Array(6 * list.length);
  for (let n = 0; n < list.length; n++) {
    const t = 3 * list[n]!;
    const a = 3 * indices[t]!;
    const b = 3 * indices[t + 1]!;
    const c = 3 * indices[t + 2]!;
    for (let axis = 0; axis < 3; axis++) {
      const p = positions[a + axis]!;
      const q = positions[b + axis]!;
      const r = positions[c + axis]!;
      bounds[6 * n + axis] = Math.min(p, q, r);
      bounds[6 * n + 3 + axis] = Math.max(p, q, r);
    }
  }
  return bounds;
}

function cornersInOrder(mesh: TriMesh, list: Uint32Array, order: Uint32Array): Float32Array {
  const { positions, indices } = mesh;
  const corners = new Float32Array(9 * order.length);
  for (let slot = 0; slot < order.length; slot++) {
    const t = 3 * list[order[slot]!]!;
    for (let corner = 0; corner < 3; corner++) {
      const at = 3 * indices[t + corner]!;
      corners[9 * slot + 3 * corner] = positions[at]!;
      corners[9 * slot + 3 * corner + 1] = positions[at + 1]!;
      corners[9 * slot + 3 * corner + 2] = positions[at + 2]!;
    }
  }
  return corners;
}

function emptyBox(box: Float32Array, at: number): void {
  box[at] = box[at + 1] = box[at + 2] = Infinity;
  box[at + 3] = box[at + 4] = box[at + 5] = -Infinity;
}

function growOver(box: Float32Array, at: number, other: Float32Array, from: number): void {
  if (other[from]! < box[at]!) box[at] = other[from]!;
  if (other[from + 1]! < box[at + 1]!) box[at + 1] = other[from + 1]!;
  if (other[from + 2]! < box[at + 2]!) box[at + 2] = other[from + 2]!;
  if (other[from + 3]! > box[at + 3]!) box[at + 3] = other[from + 3]!;
  if (other[from + 4]! > box[at + 4]!) box[at + 4] = other[from + 4]!;
  if (other[from + 5]! > box[at + 5]!) box[at + 5] = other[from + 5]!;
}

function halfArea(box: Float32Array, at: number): number {
  const x = box[at + 3]! - box[at]!;
  const y = box[at + 4]! - box[at + 1]!;
  const z = box[at + 5]! - box[at + 2]!;
  return x < 0 ? 0 : x * y + y * z + z * x;
}

/** Writes the box round order[from, to) to the nodes' boxes. */
function rangeBox(work: Work, from: number, to: number, at: number): void {
  emptyBox(work.boxes, at);
  for (let n = from; n < to; n++) growOver(work.boxes, at, work.bounds, 6 * work.order[n]!);
}

/** Builds the node or leaf over order[from, to) and returns its child code. */
function buildRange(work: Work, from: number, to: number, depth: number): number {
  const count = to - from;
  // Splitting four or fewer further was measured: a third slower to build, no faster to ask.
  if (count <= LEAF_MOST) return ~(from * LEAF_MOST + count - 1);
  const middle = middleOf(work, from, to, depth < SAH_DEPTH ? bestCut(work, from, to) : undefined);
  const node = work.nodes++;
  if ((node & 4095) === 0) stopIfCancelled(work.watch);
  rangeBox(work, from, middle, 12 * node);
  rangeBox(work, middle, to, 12 * node + 6);
  work.children[2 * node] = buildRange(work, from, middle, depth + 1);
  work.children[2 * node + 1] = buildRange(work, middle, to, depth + 1);
  return node;
}

/** Cuts the range as told, or in two equal counts as it stands: for one common centre, or a tree grown too deep. */
function middleOf(work: Work, from: number, to: number, cut: Cut | undefined): number {
  const middle = cut ? partition(work, from, to, cut) : from;
  return middle === from || middle === to ? (from + to) >> 1 : middle;
}

/** One build runs at a time, so its tables are made once. */
const bins = new Float32Array(3 * BINS * BIN);
const rightCosts = new Float64Array(BINS);
const sweep = new Float32Array(6);
const centres = new Float64Array(6);

/** The cheapest cut of the range by the heuristic; none where all centres fall together. */
function bestCut(work: Work, from: number, to: number): Cut | undefined {
  if (!centreBox(work, from, to)) return undefined;
  fillBins(work, from, to);
  const best: Cut = { axis: -1, bin: 0, low: 0, perMm: 0 };
  let bestCost = Infinity;
  for (let axis = 0; axis < 3; axis++) bestCost = bestOnAxis(axis, bestCost, best);
  if (best.axis < 0) return undefined;
  best.low = centres[best.axis]!;
  best.perMm = binsPerMm(best.axis);
  return best;
}

/** The box round the doubled centres; false where all centres fall together. */
function centreBox(work: Work, from: number, to: number): boolean {
  for (let axis = 0; axis < 3; axis++) centreSpan(work, from, to, axis);
  return centres[3]! > centres[0]! || centres[4]! > centres[1]! || centres[5]! > centres[2]!;
}

function centreSpan(work: Work, from: number, to: number, axis: number): void {
  const { bounds, order } = work;
  let low = Infinity;
  let high = -Infinity;
  for (let n = from; n < to; n++) {
    const at = 6 * order[n]! + axis;
    const centre = bounds[at]! + bounds[at + 3]!;
    if (centre < low) low = centre;
    if (centre > high) high = centre;
  }
  centres[axis] = low;
  centres[axis + 3] = high;
}

function binsPerMm(axis: number): number {
  const extent = centres[axis + 3]! - centres[axis]!;
  return extent > 0 ? BINS / extent : 0;
}

function binOf(centre: number, low: number, perMm: number): number {
  const bin = ((centre - low) * perMm) | 0;
  return bin < BINS ? bin : BINS - 1;
}

function fillBins(work: Work, from: number, to: number): void {
  const { bounds, order } = work;
  for (let bin = 0; bin < 3 * BINS; bin++) {
    emptyBox(bins, bin * BIN);
    bins[bin * BIN + 6] = 0;
  }
  for (let axis = 0; axis < 3; axis++) {
    const perMm = binsPerMm(axis);
    if (perMm === 0) continue;
    const low = centres[axis]!;
    for (let n = from; n < to; n++) {
      const at = 6 * order[n]!;
      const bin = (axis * BINS + binOf(bounds[at + axis]! + bounds[at + 3 + axis]!, low, perMm)) * BIN;
      growOver(bins, bin, bounds, at);
      bins[bin + 6]! += 1;
    }
  }
}

/** Sweeps the bins of one axis from both sides and notes the cheapest cut in `best`. Returns the cheapest cost so far. */
function bestOnAxis(axis: number, costSoFar: number, best: Cut): number {
  if (binsPerMm(axis) === 0) return costSoFar;
  const base = axis * BINS * BIN;
  let count = 0;
  emptyBox(sweep, 0);
  for (let bin = BINS - 1; bin > 0; bin--) {
    growOver(sweep, 0, bins, base + bin * BIN);
    count += bins[base + bin * BIN + 6]!;
    rightCosts[bin] = count === 0 ? Infinity : count * halfArea(sweep, 0);
  }
  let bestCost = costSoFar;
  count = 0;
  emptyBox(sweep, 0);
  for (let bin = 0; bin < BINS - 1; bin++) {
    growOver(sweep, 0, bins, base + bin * BIN);
    count += bins[base + bin * BIN + 6]!;
    const cost = count === 0 ? Infinity : count * halfArea(sweep, 0) + rightCosts[bin + 1]!;
    if (cost < bestCost) {
      bestCost = cost;
      best.axis = axis;
      best.bin = bin;
    }
  }
  return bestCost;
}

/** Brings triangles of the cut's bin and below to the front of the range; returns where the rest begins. */
function partition(work: Work, from: number, to: number, cut: Cut): number {
  const { bounds, order } = work;
  let low = from;
  let high = to - 1;
  while (low <= high) {
    const at = 6 * order[low]! + cut.axis;
    if (binOf(bounds[at]! + bounds[at + 3]!, cut.low, cut.perMm) <= cut.bin) low++;
    else {
      const other = order[high]!;
      order[high--] = order[low]!;
      order[low] = other;
    }
  }
  return low;
}
