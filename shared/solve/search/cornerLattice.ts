import { newIntegers, SparseNumbers } from '../../base/sparseNumbers.ts';
import type { Vec3 } from '../../base/vec3.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, isPlugged } from './clearSpace.ts';
import { CORNER_CELL_RADII, type CornerMove, cornerMoves, HEADINGS } from './cornerMoves.ts';
import type { Grid, Guide } from './goalDistance.ts';

/** mm of margin asked exactly at most: about what proves the longest move clear from its ends. */
const ENOUGH_MM = 20;
/** mm. A coarse bound of this much is not asked again exactly. */
const COARSE_IS_ENOUGH_MM = 10;

/**
 * The nodes of a grid with what is known of them, found out when first asked and kept for all searches over it: the
 * margin there and how far it is to a goal. Only nodes that were asked about take room: each gets a number of its own.
 */
export class CornerLattice {
  readonly grid: Grid;
  readonly radiusMm: number;
  readonly moves: readonly (readonly CornerMove[])[];
  private readonly space: ClearSpace;
  private readonly numberOf = new SparseNumbers(newIntegers, 4);
  private readonly nodes: number[] = [];
  private readonly margins: number[] = [];
  private readonly guides: number[] = [];
  private readonly areExact: boolean[] = [];

  constructor(space: ClearSpace, radiusMm: number, grid: Grid) {
    this.space = space;
    this.radiusMm = radiusMm;
    this.grid = grid;
    this.moves = cornerMoves(radiusMm, grid.cellMm);
  }

  /** Number of the node at grid steps i, j, k; -1 outside the grid, where it is blocked, or from where no goal is known to be reached. */
  nodeAt(i: number, j: number, k: number, guide: Guide): number {
    const [nx, ny, nz] = this.grid.counts;
    if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) return -1;
    const node = i + nx * (j + ny * k);
    const at = this.numberOf.placeFor(node);
    let number = (this.numberOf.numbers[at] as number) - 1;
    if (number < 0) {
      number = this.ask(node, i, j, k, guide);
      this.numberOf.numbers[at] = number + 1;
    }
    return (this.margins[number] as number) >= 0 ? number : -1;
  }

  /** A lower bound on the margin at a node, mm. */
  marginMm(number: number): number {
    return this.margins[number] as number;
  }

  /** mm to the nearest goal from a node as the guide knows it, or no more than that where it was not worked out yet. */
  guideMm(number: number): number {
    return this.guides[number] as number;
  }

  /** The same, worked out. */
  exactGuideMm(number: number, guide: Guide): number {
    if (!this.areExact[number]) {
      this.guides[number] = guide.at(...this.pointAt(...this.stepsOf(number)));
      this.areExact[number] = true;
    }
    return this.guides[number] as number;
  }

  /** Grid steps of a node. */
  stepsOf(number: number): Vec3 {
    const [nx, ny] = this.grid.counts;
    const node = this.nodes[number] as number;
    return [node % nx, Math.floor(node / nx) % ny, Math.floor(node / (nx * ny))];
  }

  poseOf(number: number, heading: number): Pose {
    const [i, j, k] = this.stepsOf(number);
    return { point: this.pointAt(i, j, k), direction: HEADINGS[heading] as Vec3 };
  }

  private pointAt(i: number, j: number, k: number): Vec3 {
    const { origin, cellMm } = this.grid;
    return [origin[0] + (i + 0.5) * cellMm, origin[1] + (j + 0.5) * cellMm, origin[2] + (k + 0.5) * cellMm];
  }

  private ask(node: number, i: number, j: number, k: number, guide: Guide): number {
    const [x, y, z] = this.pointAt(i, j, k);
    const { field, offsetMm } = this.space;
    const coarse = field.coarseMarginMm(x, y, z) + offsetMm;
    let margin = coarse >= COARSE_IS_ENOUGH_MM ? coarse : field.marginMm(x, y, z, ENOUGH_MM - offsetMm) + offsetMm;
    const guideMm = margin >= 0 ? guide.leastAt(x, y, z) : Number.POSITIVE_INFINITY;
    if (guideMm === Number.POSITIVE_INFINITY || isPlugged(this.space, x, y, z)) margin = -1;
    this.nodes.push(node);
    this.margins.push(margin);
    this.guides.push(guideMm);
    this.areExact.push(false);
    return this.nodes.length - 1;
  }
}

/** Cell of the lattice for a least radius, mm; `fineness` 1 is the coarsest, 2 halves it. */
export function cornerCellMm(radiusMm: number, fineness: number): number {
  return (CORNER_CELL_RADII * radiusMm) / fineness;
}
