/**
 * Normal equations of a least-squares problem whose terms each join a few neighbouring unknowns: a symmetric matrix with a
 * band, kept by its lower half, and its right side. Solved by Cholesky's method in n w^2 operations (Golub and Van
 * Loan, Matrix Computations, 4th ed., section 4.3.5).
 */
export class BandedLeastSquares {
  readonly size: number;
  private readonly width: number;
  /** row i holds the elements (i, i - width) .. (i, i) */
  private readonly band: Float64Array;
  private readonly right: Float64Array;

  /** size: unknowns; width: greatest difference of the numbers of two unknowns in one term */
  constructor(size: number, width: number) {
    this.size = size;
    this.width = width;
    this.band = new Float64Array(size * (width + 1));
    this.right = new Float64Array(size);
  }

  clear(): void {
    this.band.fill(0);
    this.right.fill(0);
  }

  /** Adds the term weight (residual + gradient . step)^2 / 2. Unknowns numbered below 0 or past the last are held and left out. */
  add(weight: number, residual: number, unknowns: readonly number[], gradient: readonly number[]): void {
    const { band, right, width, size } = this;
    for (let a = 0; a < unknowns.length; a++) {
      const i = unknowns[a] as number;
      if (i < 0 || i >= size) continue;
      const g = weight * (gradient[a] as number);
      right[i] = (right[i] as number) - g * residual;
      for (let b = 0; b < unknowns.length; b++) {
        const j = unknowns[b] as number;
        if (j < 0 || j > i) continue;
        const at = i * (width + 1) + width - (i - j);
        band[at] = (band[at] as number) + g * (gradient[b] as number);
      }
    }
  }

  /** The step that solves the problem with `damping` added on the diagonal; undefined where the matrix is not positive. */
  solve(damping: number): Float64Array | undefined {
    const { size, width } = this;
    const row = width + 1;
    const lower = Float64Array.from(this.band);
    for (let i = 0; i < size; i++) {
      for (let j = Math.max(0, i - width); j <= i; j++) {
        let sum = (lower[i * row + width - (i - j)] as number) + (i === j ? damping : 0);
        for (let k = Math.max(0, i - width); k < j; k++) {
          sum -= (lower[i * row + width - (i - k)] as number) * (lower[j * row + width - (j - k)] as number);
        }
        if (i === j && !(sum > 0)) return undefined;
        lower[i * row + width - (i - j)] = i === j ? Math.sqrt(sum) : sum / (lower[j * row + width] as number);
      }
    }
    return this.substitute(lower);
  }

  private substitute(lower: Float64Array): Float64Array {
    const { size, width } = this;
    const row = width + 1;
    const x = Float64Array.from(this.right);
    for (let i = 0; i < size; i++) {
      let sum = x[i] as number;
      for (let k = Math.max(0, i - width); k < i; k++)
        sum -= (lower[i * row + width - (i - k)] as number) * (x[k] as number);
      x[i] = sum / (lower[i * row + width] as number);
    }
    for (let i = size - 1; i >= 0; i--) {
      let sum = x[i] as number;
      for (let k = i + 1; k <= Math.min(size - 1, i + width); k++) {
        sum -= (lower[k * row + width - (k - i)] as number) * (x[k] as number);
      }
      x[i] = sum / (lower[i * row + width] as number);
    }
    return x;
  }
}
