import { COLUMN, type TurnChain } from './turnChain.ts';

/** What a step is to weigh. */
export interface StepWeights {
  /** price of moving, per (curvature change)^2 and length, and per (length change)^2 */
  readonly inertia: number;
  /** how far the step may stay behind: the multipliers stay near (what is left of the miss) / slack */
  readonly slack: number;
  /** the miss counts as closed by the model when no more than this is left */
  readonly closeEnough: number;
}

/** The length may change by so many radii in one step. */
const MOST_LENGTH_CHANGE = 1;
const MOST_NEWTON_STEPS = 14;
const MOST_HALVINGS = 14;
const SUFFICIENT_RISE = 1e-4;
const ROWS = 5;

/**
 * The step of a chain towards its goal that is shortest in the linear model of its end, with no curvature above 1:
 * minimise  dLength + inertia / 2 (sum share length |change of curvature|^2 + dLength^2)
 * with      sum columns x changes + byLength dLength = miss  (less slack x multipliers),  |curvature| <= 1.
 * Method: only the five equations couple the arcs, so the dual has five unknowns, and for given multipliers every curvature is
 * a projection on the unit disc (Pontryagin's principle, with inertia). Its concave maximum is found by Newton's method with
 * halved steps; the Hessian is the sum of the projections' derivatives.
 */
export class ChainStep {
  /** new curvatures and change of length after `solve` */
  readonly bends: Float64Array;
  lengthChange = 0;
  /** multipliers: kept from one step to the next as the first guess */
  readonly multipliers = new Float64Array(ROWS);
  private readonly trial = new Float64Array(ROWS);
  private readonly slope = new Float64Array(ROWS);
  private readonly hessian = new Float64Array(ROWS * ROWS);
  private readonly newton = new Float64Array(ROWS);

  constructor(arcs: number) {
    this.bends = new Float64Array(2 * arcs);
  }

  /** Size of the multipliers: what a unit of miss costs in length. */
  get price(): number {
    return sizeOf(this.multipliers);
  }

  forget(): void {
    this.multipliers.fill(0);
  }

  solve(
    chain: TurnChain,
    columns: Float64Array,
    byLength: Float64Array,
    miss: Float64Array,
    weights: StepWeights,
  ): void {
    const { multipliers, trial, slope, newton } = this;
    let value = this.dual(multipliers, chain, columns, byLength, miss, weights);
    for (let round = 0; round < MOST_NEWTON_STEPS; round++) {
      const before = sizeOf(slope);
      if (before <= weights.closeEnough || !solveSymmetric(this.hessian, slope, newton)) break;
      const rise = dotOf(newton, slope);
      let share = 1;
      let reached = value;
      let halvings = 0;
      for (; halvings <= MOST_HALVINGS; halvings++, share /= 2) {
        for (let r = 0; r < ROWS; r++) trial[r] = (multipliers[r] as number) + share * (newton[r] as number);
        reached = this.dual(trial, chain, columns, byLength, miss, weights);
        // Near the top the rise drowns in rounding, but the slope still tells.
        if (reached >= value + SUFFICIENT_RISE * share * rise || sizeOf(slope) < before / 2) break;
      }
      if (halvings > MOST_HALVINGS) {
        this.dual(multipliers, chain, columns, byLength, miss, weights);
        break;
      }
      multipliers.set(trial);
      value = reached;
    }
  }

  /** Value of the dual at `m`; leaves its gradient in `slope`, minus its Hessian in `hessian`, the step in `bends`. */
  private dual(
    m: Float64Array,
    { bends, shares, length }: TurnChain,
    columns: Float64Array,
    byLength: Float64Array,
    miss: Float64Array,
    { inertia, slack }: StepWeights,
  ): number {
    const m0 = m[0] as number;
    const m1 = m[1] as number;
    const m2 = m[2] as number;
    const m3 = m[3] as number;
    const m4 = m[4] as number;
    const l0 = byLength[0] as number;
    const l1 = byLength[1] as number;
    const l2 = byLength[2] as number;
    const l3 = byLength[3] as number;
    const l4 = byLength[4] as number;
    const pull = 1 + l0 * m0 + l1 * m1 + l2 * m2 + l3 * m3 + l4 * m4;
    const wanted = -pull / inertia;
    const change = Math.max(-MOST_LENGTH_CHANGE, Math.min(MOST_LENGTH_CHANGE, wanted));
    const free = change === wanted ? 1 / inertia : 0;
    let value = pull * change + (inertia / 2) * change * change;
    let s0 = l0 * change;
    let s1 = l1 * change;
    let s2 = l2 * change;
    let s3 = l3 * change;
    let s4 = l4 * change;
    let h00 = free * l0 * l0;
    let h10 = free * l1 * l0;
    let h11 = free * l1 * l1;
    let h20 = free * l2 * l0;
    let h21 = free * l2 * l1;
    let h22 = free * l2 * l2;
    let h30 = free * l3 * l0;
    let h31 = free * l3 * l1;
    let h32 = free * l3 * l2;
    let h33 = free * l3 * l3;
    let h40 = free * l4 * l0;
    let h41 = free * l4 * l1;
    let h42 = free * l4 * l2;
    let h43 = free * l4 * l3;
    let h44 = free * l4 * l4;
    for (let i = 0; i < shares.length; i++) {
      const o = COLUMN * i;
      const a0 = columns[o] as number;
      const a1 = columns[o + 1] as number;
      const a2 = columns[o + 2] as number;
      const a3 = columns[o + 3] as number;
      const a4 = columns[o + 4] as number;
      const b0 = columns[o + 5] as number;
      const b1 = columns[o + 6] as number;
      const b2 = columns[o + 7] as number;
      const b3 = columns[o + 8] as number;
      const b4 = columns[o + 9] as number;
      const pullA = a0 * m0 + a1 * m1 + a2 * m2 + a3 * m3 + a4 * m4;
      const pullB = b0 * m0 + b1 * m1 + b2 * m2 + b3 * m3 + b4 * m4;
      const weight = inertia * (shares[i] as number) * length;
      const wasA = bends[2 * i] as number;
      const wasB = bends[2 * i + 1] as number;
      let bendA = wasA - pullA / weight;
      let bendB = wasB - pullB / weight;
      const size = Math.sqrt(bendA * bendA + bendB * bendB);
      // Derivative of the projection on the disc: the identity inside, 1 / size along the rim outside.
      let paa = 1 / weight;
      let pab = 0;
      let pbb = paa;
      if (size > 1) {
        bendA /= size;
        bendB /= size;
        const along = 1 / (size * weight);
        paa = along * bendB * bendB;
        pab = -along * bendA * bendB;
        pbb = along * bendA * bendA;
      }
      this.bends[2 * i] = bendA;
      this.bends[2 * i + 1] = bendB;
      const da = bendA - wasA;
      const db = bendB - wasB;
      value += pullA * da + pullB * db + (weight / 2) * (da * da + db * db);
      s0 += a0 * da + b0 * db;
      s1 += a1 * da + b1 * db;
      s2 += a2 * da + b2 * db;
      s3 += a3 * da + b3 * db;
      s4 += a4 * da + b4 * db;
      const u0 = paa * a0 + pab * b0;
      const v0 = pab * a0 + pbb * b0;
      const u1 = paa * a1 + pab * b1;
      const v1 = pab * a1 + pbb * b1;
      const u2 = paa * a2 + pab * b2;
      const v2 = pab * a2 + pbb * b2;
      const u3 = paa * a3 + pab * b3;
      const v3 = pab * a3 + pbb * b3;
      const u4 = paa * a4 + pab * b4;
      const v4 = pab * a4 + pbb * b4;
      h00 += u0 * a0 + v0 * b0;
      h10 += u1 * a0 + v1 * b0;
      h11 += u1 * a1 + v1 * b1;
      h20 += u2 * a0 + v2 * b0;
      h21 += u2 * a1 + v2 * b1;
      h22 += u2 * a2 + v2 * b2;
      h30 += u3 * a0 + v3 * b0;
      h31 += u3 * a1 + v3 * b1;
      h32 += u3 * a2 + v3 * b2;
      h33 += u3 * a3 + v3 * b3;
      h40 += u4 * a0 + v4 * b0;
      h41 += u4 * a1 + v4 * b1;
      h42 += u4 * a2 + v4 * b2;
      h43 += u4 * a3 + v4 * b3;
      h44 += u4 * a4 + v4 * b4;
    }
    this.lengthChange = change;
    const { slope, hessian } = this;
    slope[0] = s0 - (miss[0] as number) - slack * m0;
    slope[1] = s1 - (miss[1] as number) - slack * m1;
    slope[2] = s2 - (miss[2] as number) - slack * m2;
    slope[3] = s3 - (miss[3] as number) - slack * m3;
    slope[4] = s4 - (miss[4] as number) - slack * m4;
    hessian[0] = h00 + slack;
    hessian[5] = h10;
    hessian[6] = h11 + slack;
    hessian[10] = h20;
    hessian[11] = h21;
    hessian[12] = h22 + slack;
    hessian[15] = h30;
    hessian[16] = h31;
    hessian[17] = h32;
    hessian[18] = h33 + slack;
    hessian[20] = h40;
    hessian[21] = h41;
    hessian[22] = h42;
    hessian[23] = h43;
    hessian[24] = h44 + slack;
    return value - dotOf(m, miss) - (slack / 2) * dotOf(m, m);
  }
}

function dotOf(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let r = 0; r < ROWS; r++) sum += (a[r] as number) * (b[r] as number);
  return sum;
}

function sizeOf(a: Float64Array): number {
  return Math.sqrt(dotOf(a, a));
}

const root = new Float64Array(ROWS * ROWS);

/** x with matrix x = right side, by Cholesky's factors of the lower half; false when the matrix is not positive. */
function solveSymmetric(matrix: Float64Array, right: Float64Array, x: Float64Array): boolean {
  for (let r = 0; r < ROWS; r++) {
    for (let c = 0; c <= r; c++) {
      let sum = matrix[ROWS * r + c] as number;
      for (let k = 0; k < c; k++) sum -= (root[ROWS * r + k] as number) * (root[ROWS * c + k] as number);
      if (c < r) root[ROWS * r + c] = sum / (root[ROWS * c + c] as number);
      else if (sum > 0) root[ROWS * r + r] = Math.sqrt(sum);
      else return false;
    }
  }
  for (let r = 0; r < ROWS; r++) {
    let sum = right[r] as number;
    for (let k = 0; k < r; k++) sum -= (root[ROWS * r + k] as number) * (x[k] as number);
    x[r] = sum / (root[ROWS * r + r] as number);
  }
  for (let r = ROWS - 1; r >= 0; r--) {
    let sum = x[r] as number;
    for (let k = r + 1; k < ROWS; k++) sum -= (root[ROWS * k + r] as number) * (x[k] as number);
    x[r] = sum / (root[ROWS * r + r] as number);
  }
  return true;
}
