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

  /**
   * Adds the term weight (residual + gradient . step)^2 / 2 over the unknowns numbered from `first` on, one for each element of the
   * gradient. Unknowns numbered below 0 or past the last are held and left out.
   */
  add(weight: number, residual: number, first: number, gradient: ArrayLike<number>): void {
    const { band, right, width, size } = this;
    const from = Math.max(0, -first);
    const to = Math.min(gradient.length, size - first);
    for (let a = from; a < to; a++) {
      const i = first + a;
      const g = weight * (gradient[a] as number);
      right[i] = (right[i] as number) - g * residual;
      const row = i * (width + 1) + width - i + first;
      for (let b = from; b <= a; b++) band[row + b] = (band[row + b] as number) + g * (gradient[b] as number);
    }
  }

  /** The step that solves the problem with `damping` added on the diagonal; undefined where the matrix is not positive. */
  solve(damping: number): Float64Array | undefined {
    const lower = Float64Array.from(this.band);
    return this.factor(lower, damping) ? this.substitute(lower) : undefined;
  }

  /** Turns the band into its lower factor (Cholesky), row by row; false where it has none. */
  private factor(lower: Float64Array, damping: number): boolean {
    const { size, width } = this;
    const row = width + 1;
    for (let i = 0; i < size; i++) {
      for (let j = Math.max(0, i - width); j <= i; j++) {
        let sum = (lower[i * row + width - (i - j)] as number) + (i === j ? damping : 0);
        for (let k = Math.max(0, i - width); k < j; k++) {
          sum -= (lower[i * row + width - (i - k)] as number) * (lower[j * row + width - (j - k)] as number);
        }
        if (i === j && !(sum > 0)) return false;
        lower[i * row + width - (i - j)] = i === j ? Math.sqrt(sum) : sum / (lower[j * row + width] as number);
      }
    }
    return true;
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
