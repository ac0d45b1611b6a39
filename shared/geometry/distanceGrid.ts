import { invariant } from '../base/invariant.ts';
import { stopIfCancelled, UNWATCHED, type Watch } from '../base/watch.ts';
import type { Box } from './box.ts';
import { squaredDistancesToMarked } from './distanceTransform.ts';
import type { TriMesh } from './triMesh.ts';
import { markTouchedCells } from './voxelise.ts';

/**
 * How far the mesh is at least, cell by cell: for skipping exact queries and steering a search, never for a clearance
 * that is reported. Cell (i, j, k) is number i + nx * (j + ny * k).
 */
export interface DistanceGrid {
  /** least corner of the grid, mm */
  readonly minX: number;
  readonly minY: number;
  readonly minZ: number;
  readonly cellMm: number;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  /** Squared gap, in cells, between a cell and the nearest cell with mesh in it; 0 beside one; Infinity without mesh. */
  readonly squaredGaps: Float32Array;
  /** True where all triangles lie within the grid, so that being outside adds distance. */
  readonly holdsAll: boolean;
}

/** Whole squares up to here are exact in float32, so the grid's diagonal may not be longer. */
const GREATEST_SQUARED_DIAGONAL = 2 ** 24;
/** 1 GB of float32. */
const MOST_CELLS = 2 ** 28;

/**
 * A grid of cubes of cellMm over `bounds` (widened to whole cells) for all triangles of a mesh or the named ones (may be
 * none). Cells that a triangle touches are marked, never missing one; the marks are widened by one cell each way, and an
 * exact Euclidean distance transform then gives the gap between *cells*, not cell centres: a true lower bound that loses
 * at most two cell diagonals. O(cells + triangles). Bounds must not be empty.
 */
export function buildDistanceGrid(
  mesh: TriMesh,
  triangles: Uint32Array | undefined,
  bounds: Box,
  cellMm: number,
  watch: Watch = UNWATCHED,
): DistanceGrid {
  invariant(cellMm > 0 && Number.isFinite(cellMm), 'buildDistanceGrid: cellMm must be above 0');
  const cells = [0, 1, 2].map((axis) => Math.max(1, Math.ceil((bounds.max[axis]! - bounds.min[axis]!) / cellMm)));
  const [nx, ny, nz] = cells as [number, number, number];
  invariant(nx * ny * nz <= MOST_CELLS, 'buildDistanceGrid: too many cells, take larger ones');
  invariant(nx * nx + ny * ny + nz * nz <= GREATEST_SQUARED_DIAGONAL, 'buildDistanceGrid: more than 4096 cells across');
  const [minX, minY, minZ] = bounds.min;
  const shape = { minX, minY, minZ, cellMm, nx, ny, nz };
  const marks = new Uint8Array(nx * ny * nz);
  const holdsAll = markTouchedCells(mesh, triangles, shape, marks);
  stopIfCancelled(watch);
  return { ...shape, squaredGaps: squaredDistancesToMarked(widen(marks, shape), nx, ny, nz), holdsAll };
}

/**
 * A distance, mm, that the mesh is never nearer to (x, y, z) than; 0 beside the mesh, Infinity where there is none.
 * Outside the grid the nearest point of the grid answers: bringing both the point and the mesh to the grid's nearest
 * point never lengthens the way between them, and mesh outside is marked where that brings it. Where the grid holds all
 * of the mesh the way to the grid is added (the angle at the grid's face is not acute).
 */
export function gridLowerBound(grid: DistanceGrid, x: number, y: number, z: number): number {
  const { cellMm, nx, ny, nz } = grid;
  const squaredMm = grid.squaredGaps[gridCellAt(grid, x, y, z)]! * cellMm * cellMm;
  if (!grid.holdsAll) return Math.sqrt(squaredMm);
  const ox = outsideOf(x - grid.minX, nx * cellMm);
  const oy = outsideOf(y - grid.minY, ny * cellMm);
  const oz = outsideOf(z - grid.minZ, nz * cellMm);
  return Math.sqrt(squaredMm + ox * ox + oy * oy + oz * oz);
}

/** Number of the cell that holds a point, mm; for a point outside the grid, of the cell nearest to it. */
export function gridCellAt(grid: DistanceGrid, x: number, y: number, z: number): number {
  const { cellMm, nx, ny, nz } = grid;
  const i = clampCell(Math.floor((x - grid.minX) / cellMm), nx);
  const j = clampCell(Math.floor((y - grid.minY) / cellMm), ny);
  const k = clampCell(Math.floor((z - grid.minZ) / cellMm), nz);
  return i + nx * (j + ny * k);
}

function clampCell(cell: number, count: number): number {
  return cell < 0 ? 0 : cell >= count ? count - 1 : cell;
}

function outsideOf(along: number, extent: number): number {
  return Math.max(-along, along - extent, 0);
}

/** Marks widened by one cell along each axis in turn, so by the 26 neighbours. Works in place, answers the same array. */
function widen(marks: Uint8Array, shape: { nx: number; ny: number; nz: number }): Uint8Array {
  const { nx, ny, nz } = shape;
  widenAlong(marks, 1, nx, ny * nz, (line) => line * nx);
  widenAlong(marks, nx, ny, nx * nz, (line) => (line % nx) + Math.floor(line / nx) * nx * ny);
  widenAlong(marks, nx * ny, nz, nx * ny, (line) => line);
  return marks;
}

function widenAlong(
  marks: Uint8Array,
  stride: number,
  count: number,
  lines: number,
  startOf: (line: number) => number,
): void {
  for (let line = 0; line < lines; line++) {
    let at = startOf(line);
    let before = 0;
    for (let n = 0; n < count; n++, at += stride) {
      const here = marks[at]!;
      const after = n + 1 < count ? marks[at + stride]! : 0;
      marks[at] = before | here | after;
      before = here;
    }
  }
}
