import { VOXEL_TOUCH_CELLS } from '../base/tolerances.ts';
import { type TriMesh, triangleCount } from './triMesh.ts';

/** Cubes of cellMm from a least corner, mm; cell (i, j, k) is number i + nx * (j + ny * k). */
export interface CellShape {
  readonly minX: number;
  readonly minY: number;
  readonly minZ: number;
  readonly cellMm: number;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
}

/**
 * Sets marks[cell] = 1 for every cell that a triangle (all, or the named ones) touches, never missing one; a few more may
 * be marked within VOXEL_TOUCH_CELLS of a face. What lies outside the grid is marked where its nearest point of the
 * grid lies, generously: the outer cells that its box is brought to. Answers whether all of it lay within the grid.
 *
 * A range of cells is halved until it is one cell or the separating axis test (Akenine-Moeller 2001, "Fast 3D
 * triangle-box overlap testing") finds it clear: O(touched cells * log) for a triangle of any size.
 */
export function markTouchedCells(
  mesh: TriMesh,
  triangles: Uint32Array | undefined,
  shape: CellShape,
  marks: Uint8Array,
): boolean {
  const count = triangles ? triangles.length : triangleCount(mesh);
  let holdsAll = true;
  for (let n = 0; n < count; n++) {
    loadTriangle(mesh, triangles ? triangles[n]! : n, shape);
    if (!markLoaded(shape, marks)) holdsAll = false;
  }
  return holdsAll;
}

/** Places up to here are exact to far below VOXEL_TOUCH_CELLS: 4096 cells across at most, and as much again outside. */
const USUAL_REACH_CELLS = 8192;

/** Corners a, b, c of the triangle in hand, in cells from the least corner: one is in hand at a time. */
const corner = new Float64Array(9);
const low = new Float64Array(3);
const high = new Float64Array(3);
/** How near counts as touching for it, cells: more for a triangle that reaches far, since rounding grows with places. */
let slack = VOXEL_TOUCH_CELLS;

function loadTriangle(mesh: TriMesh, triangle: number, shape: CellShape): void {
  const { positions, indices } = mesh;
  const { minX, minY, minZ, cellMm } = shape;
  for (let c = 0; c < 3; c++) {
    const at = 3 * indices[3 * triangle + c]!;
    corner[3 * c] = (positions[at]! - minX) / cellMm;
    corner[3 * c + 1] = (positions[at + 1]! - minY) / cellMm;
    corner[3 * c + 2] = (positions[at + 2]! - minZ) / cellMm;
  }
  for (let axis = 0; axis < 3; axis++) {
    low[axis] = Math.min(corner[axis]!, corner[axis + 3]!, corner[axis + 6]!);
    high[axis] = Math.max(corner[axis]!, corner[axis + 3]!, corner[axis + 6]!);
  }
  const reach = Math.max(1, high[0]!, high[1]!, high[2]!, -low[0]!, -low[1]!, -low[2]!);
  slack = VOXEL_TOUCH_CELLS * Math.max(1, reach / USUAL_REACH_CELLS);
}

function cellAt(place: number, count: number): number {
  const cell = Math.floor(place);
  return cell < 0 ? 0 : cell >= count ? count - 1 : cell;
}

function markLoaded(shape: CellShape, marks: Uint8Array): boolean {
  const { nx, ny, nz } = shape;
  const i0 = cellAt(low[0]! - slack, nx);
  const i1 = cellAt(high[0]! + slack, nx);
  const j0 = cellAt(low[1]! - slack, ny);
  const j1 = cellAt(high[1]! + slack, ny);
  const k0 = cellAt(low[2]! - slack, nz);
  const k1 = cellAt(high[2]! + slack, nz);
  const inside = low[0]! >= 0 && low[1]! >= 0 && low[2]! >= 0 && high[0]! <= nx && high[1]! <= ny && high[2]! <= nz;
  if (!inside) markOutside(shape, marks, i0, i1, j0, j1, k0, k1);
  // A triangle touches every layer of cells between its ends: in a single row of cells, all of them.
  const isRow = (i1 > i0 ? 1 : 0) + (j1 > j0 ? 1 : 0) + (k1 > k0 ? 1 : 0) <= 1;
  if (isRow && inside) fill(shape, marks, i0, i1, j0, j1, k0, k1);
  else markRange(shape, marks, i0, i1, j0, j1, k0, k1);
  return inside;
}

/** For a triangle that leaves the grid: every outer cell, on the faces it leaves by, of its box brought to the grid. */
function markOutside(
  shape: CellShape,
  marks: Uint8Array,
  i0: number,
  i1: number,
  j0: number,
  j1: number,
  k0: number,
  k1: number,
): void {
  const { nx, ny, nz } = shape;
  if (low[0]! < 0) fill(shape, marks, 0, 0, j0, j1, k0, k1);
  if (high[0]! > nx) fill(shape, marks, nx - 1, nx - 1, j0, j1, k0, k1);
  if (low[1]! < 0) fill(shape, marks, i0, i1, 0, 0, k0, k1);
  if (high[1]! > ny) fill(shape, marks, i0, i1, ny - 1, ny - 1, k0, k1);
  if (low[2]! < 0) fill(shape, marks, i0, i1, j0, j1, 0, 0);
  if (high[2]! > nz) fill(shape, marks, i0, i1, j0, j1, nz - 1, nz - 1);
}

function fill(
  shape: CellShape,
  marks: Uint8Array,
  i0: number,
  i1: number,
  j0: number,
  j1: number,
  k0: number,
  k1: number,
): void {
  for (let k = k0; k <= k1; k++) {
    for (let j = j0; j <= j1; j++) {
      const row = shape.nx * (j + shape.ny * k);
      marks.fill(1, row + i0, row + i1 + 1);
    }
  }
}

/** Marks the cells of the range that the triangle in hand touches. The range holds the triangle's box or part of it. */
function markRange(
  shape: CellShape,
  marks: Uint8Array,
  i0: number,
  i1: number,
  j0: number,
  j1: number,
  k0: number,
  k1: number,
): void {
  if (!touchesRange(i0, i1, j0, j1, k0, k1)) return;
  const di = i1 - i0;
  const dj = j1 - j0;
  const dk = k1 - k0;
  if (di + dj + dk === 0) {
    marks[i0 + shape.nx * (j0 + shape.ny * k0)] = 1;
  } else if (di >= dj && di >= dk) {
    const middle = (i0 + i1) >> 1;
    markRange(shape, marks, i0, middle, j0, j1, k0, k1);
    markRange(shape, marks, middle + 1, i1, j0, j1, k0, k1);
  } else if (dj >= dk) {
    const middle = (j0 + j1) >> 1;
    markRange(shape, marks, i0, i1, j0, middle, k0, k1);
    markRange(shape, marks, i0, i1, middle + 1, j1, k0, k1);
  } else {
    const middle = (k0 + k1) >> 1;
    markRange(shape, marks, i0, i1, j0, j1, k0, middle);
    markRange(shape, marks, i0, i1, j0, j1, middle + 1, k1);
  }
}

/** Separating axis test of the triangle in hand against the range's box, faces moved outward by `slack`. */
function touchesRange(i0: number, i1: number, j0: number, j1: number, k0: number, k1: number): boolean {
  if (low[0]! > i1 + 1 + slack || high[0]! < i0 - slack) return false;
  if (low[1]! > j1 + 1 + slack || high[1]! < j0 - slack) return false;
  if (low[2]! > k1 + 1 + slack || high[2]! < k0 - slack) return false;
  middle[0] = (i0 + i1 + 1) / 2;
  middle[1] = (j0 + j1 + 1) / 2;
  middle[2] = (k0 + k1 + 1) / 2;
  half[0] = (i1 + 1 - i0) / 2 + slack;
  half[1] = (j1 + 1 - j0) / 2 + slack;
  half[2] = (k1 + 1 - k0) / 2 + slack;
  return !normalSeparates() && !edgeSeparates(0, 3) && !edgeSeparates(3, 6) && !edgeSeparates(6, 0);
}

const middle = new Float64Array(3);
const half = new Float64Array(3);

function normalSeparates(): boolean {
  const ux = corner[3]! - corner[0]!;
  const uy = corner[4]! - corner[1]!;
  const uz = corner[5]! - corner[2]!;
  const vx = corner[6]! - corner[0]!;
  const vy = corner[7]! - corner[1]!;
  const vz = corner[8]! - corner[2]!;
  return separates(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
}

/** The three axes square to the edge and to an axis of the grid. */
function edgeSeparates(from: number, to: number): boolean {
  const ex = corner[to]! - corner[from]!;
  const ey = corner[to + 1]! - corner[from + 1]!;
  const ez = corner[to + 2]! - corner[from + 2]!;
  return separates(0, -ez, ey) || separates(ez, 0, -ex) || separates(-ey, ex, 0);
}

/** All three corners are measured along the axis, so that even a badly rounded axis never separates what touches. */
function separates(ax: number, ay: number, az: number): boolean {
  const m = ax * middle[0]! + ay * middle[1]! + az * middle[2]!;
  const p = ax * corner[0]! + ay * corner[1]! + az * corner[2]! - m;
  const q = ax * corner[3]! + ay * corner[4]! + az * corner[5]! - m;
  const r = ax * corner[6]! + ay * corner[7]! + az * corner[8]! - m;
  const reach = half[0]! * Math.abs(ax) + half[1]! * Math.abs(ay) + half[2]! * Math.abs(az);
  return Math.min(p, q, r) > reach || Math.max(p, q, r) < -reach;
}
