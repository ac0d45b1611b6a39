import type { Vec3 } from '../../base/vec3.ts';

/** Another run's hose and ends as an obstacle: a chain of straight pieces with a radius. Points mm, bay frame. */
export interface Tube {
  readonly run: string;
  readonly points: readonly Vec3[];
  readonly radiusMm: number;
  /** true = of a run that does not lie yet: what stands on its ports whatever way its hose goes */
  readonly standing?: boolean;
}

export interface NearestTube {
  /** from the point to the tube's surface; negative inside */
  gapMm: number;
  x: number;
  y: number;
  z: number;
  run: string;
}

/** Tubes with their pieces in short groups, and the groups in a tree of boxes, so that most of them are passed over. */
export interface TubeField {
  readonly tubes: readonly Tube[];
  /** ax ay az bx by bz radius tubeNumber, per piece */
  readonly pieces: Float64Array;
  /**
   * least x y z and most x y z of the centrelines, largest radius, then for a leaf its first piece and one past its last, for
   * a fork the number of its second child and -1; per node, the first child of a fork right behind it
   */
  readonly nodes: Float64Array;
}

const GROUP_PIECES = 4;
const PIECE_STRIDE = 8;
const NODE_STRIDE = 9;
const RADIUS = 6;
const FIRST = 7;
const PAST_LAST = 8;

export function buildTubeField(tubes: readonly Tube[]): TubeField {
  const pieces: number[] = [];
  const leaves: number[][] = [];
  for (const [number, tube] of tubes.entries()) {
    for (let first = 0; first + 1 < tube.points.length; first += GROUP_PIECES) {
      const last = Math.min(first + GROUP_PIECES, tube.points.length - 1);
      const begin = pieces.length / PIECE_STRIDE;
      leaves.push([...boxOf(tube, first, last), tube.radiusMm, begin, begin + last - first]);
      for (let i = first; i < last; i++)
        pieces.push(...(tube.points[i] as Vec3), ...(tube.points[i + 1] as Vec3), tube.radiusMm, number);
    }
  }
  const nodes: number[][] = [];
  if (leaves.length > 0) addNodes(nodes, leaves);
  return { tubes, pieces: Float64Array.from(pieces), nodes: Float64Array.from(nodes.flat()) };
}

const parts = new WeakMap<TubeField, Map<string, TubeField>>();

/** The tubes of some of the runs of a field; built once, and kept as long as the field. */
export function tubesOfRuns(all: TubeField, runs: ReadonlySet<string>): TubeField {
  if (all.tubes.every((tube) => runs.has(tube.run))) return all;
  const known = parts.get(all) ?? new Map<string, TubeField>();
  parts.set(all, known);
  const name = JSON.stringify([...runs].sort());
  const field = known.get(name) ?? buildTubeField(all.tubes.filter((tube) => runs.has(tube.run)));
  known.set(name, field);
  return field;
}

function boxOf(tube: Tube, first: number, last: number): number[] {
  const box = [...(tube.points[first] as Vec3), ...(tube.points[first] as Vec3)];
  for (let i = first + 1; i <= last; i++) widen(box, [...(tube.points[i] as Vec3), ...(tube.points[i] as Vec3)]);
  return box;
}

/** Widens a box, least x y z and most x y z, and what follows the largest of, to hold another. */
function widen(box: number[], by: readonly number[]): void {
  for (let k = 0; k < box.length; k++) {
    const choose = k < 3 ? Math.min : Math.max;
    box[k] = choose(box[k] as number, by[k] as number);
  }
}

/** Adds the tree over these leaves, halved at the middle one along the longest side of what they fill. */
function addNodes(nodes: number[][], leaves: readonly number[][]): void {
  if (leaves.length === 1) {
    nodes.push(leaves[0] as number[]);
    return;
  }
  const fork = [...(leaves[0] as number[])];
  for (const leaf of leaves) widen(fork, leaf);
  const sorted = [...leaves].sort(ALONG[longestSide(fork)]);
  const half = sorted.length >> 1;
  nodes.push(fork);
  addNodes(nodes, sorted.slice(0, half));
  fork[FIRST] = nodes.length;
  fork[PAST_LAST] = -1;
  addNodes(nodes, sorted.slice(half));
}

/** Orders leaves by their middles along each axis. */
const ALONG = ([0, 1, 2] as const).map(
  (axis) =>
    (p: readonly number[], q: readonly number[]): number =>
      (p[axis] as number) + (p[axis + 3] as number) - ((q[axis] as number) + (q[axis + 3] as number)),
);

/** Number of the axis along which a box is longest, the first of several. */
function longestSide(box: readonly number[]): number {
  let longest = 0;
  const side = (axis: number): number => (box[axis + 3] as number) - (box[axis] as number);
  for (const axis of [1, 2]) if (side(axis) > side(longest)) longest = axis;
  return longest;
}

export function newNearestTube(): NearestTube {
  return { gapMm: Infinity, x: 0, y: 0, z: 0, run: '' };
}

/**
 * The nearest tube surface to a point within boundMm: true when there is one; exact distance to the straight pieces.
 * out: gap (mm), the point on that tube's centreline, and its run.
 */
export function nearestTube(
  field: TubeField,
  x: number,
  y: number,
  z: number,
  boundMm: number,
  out: NearestTube,
): boolean {
  const { nodes, pieces } = field;
  let best = boundMm;
  let piece = -1;
  let bestT = 0;
  let waiting = 0;
  if (nodes.length > 0) STACK[waiting++] = 0;
  while (waiting > 0) {
    const node = STACK[--waiting] as number;
    if (leastGap(nodes, node, x, y, z) >= best) continue;
    if (nodes[node + PAST_LAST] === -1) {
      const second = (nodes[node + FIRST] as number) * NODE_STRIDE;
      const isNearer = leastGap(nodes, second, x, y, z) < leastGap(nodes, node + NODE_STRIDE, x, y, z);
      STACK[waiting++] = isNearer ? node + NODE_STRIDE : second;
      STACK[waiting++] = isNearer ? second : node + NODE_STRIDE;
      continue;
    }
    for (let i = nodes[node + FIRST] as number; i < (nodes[node + PAST_LAST] as number); i++) {
      const t = nearestParameter(pieces, i * PIECE_STRIDE, x, y, z);
      const gap = gapToPiece(pieces, i * PIECE_STRIDE, t, x, y, z);
      if (gap < best) {
        best = gap;
        piece = i * PIECE_STRIDE;
        bestT = t;
      }
    }
  }
  if (piece < 0) {
    out.gapMm = Infinity;
    return false;
  }
  out.gapMm = best;
  out.x = along(pieces, piece, 0, bestT);
  out.y = along(pieces, piece, 1, bestT);
  out.z = along(pieces, piece, 2, bestT);
  out.run = (field.tubes[pieces[piece + 7] as number] as Tube).run;
  return true;
}

/** Nodes still to be looked at; deeper than a halved tree of any number of groups. */
const STACK = new Int32Array(128);

/** No tube of the node's is nearer than this, mm. */
function leastGap(nodes: Float64Array, node: number, x: number, y: number, z: number): number {
  const dx = Math.max((nodes[node] as number) - x, 0, x - (nodes[node + 3] as number));
  const dy = Math.max((nodes[node + 1] as number) - y, 0, y - (nodes[node + 4] as number));
  const dz = Math.max((nodes[node + 2] as number) - z, 0, z - (nodes[node + 5] as number));
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - (nodes[node + RADIUS] as number);
}

function along(p: Float64Array, at: number, axis: number, t: number): number {
  const a = p[at + axis] as number;
  return a + t * ((p[at + 3 + axis] as number) - a);
}

function nearestParameter(p: Float64Array, at: number, x: number, y: number, z: number): number {
  const ax = p[at] as number;
  const ay = p[at + 1] as number;
  const az = p[at + 2] as number;
  const ux = (p[at + 3] as number) - ax;
  const uy = (p[at + 4] as number) - ay;
  const uz = (p[at + 5] as number) - az;
  const square = ux * ux + uy * uy + uz * uz;
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy + (z - az) * uz) / square));
}

function gapToPiece(p: Float64Array, at: number, t: number, x: number, y: number, z: number): number {
  const dx = x - along(p, at, 0, t);
  const dy = y - along(p, at, 1, t);
  const dz = z - along(p, at, 2, t);
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - (p[at + 6] as number);
}
