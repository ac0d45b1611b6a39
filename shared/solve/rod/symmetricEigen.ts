/** Sweeps after which Jacobi's method has long converged for 5 x 5 (it is quadratic after the third). */
const MAX_SWEEPS = 30;

/** Off-diagonal entries below this, relative to the two diagonal ones, are rounding. */
const NEGLIGIBLE = 1e-18;

/**
 * Eigenvalues and eigenvectors of a small symmetric matrix (n x n, row by row, destroyed), by Jacobi's cyclic
 * rotations. `vectors` column j belongs to `values[j]`; not sorted. Accurate to rounding (Golub & Van Loan, 8.5).
 */
export function symmetricEigen(m: Float64Array, n: number, values: Float64Array, vectors: Float64Array): void {
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) vectors[i * n + j] = i === j ? 1 : 0;
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    let turned = false;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) if (rotateAway(m, n, p, q, vectors)) turned = true;
    }
    if (!turned) break;
  }
  for (let i = 0; i < n; i++) values[i] = m[i * n + i] as number;
}

/** One rotation that makes entry (p, q) zero; false where it already is. */
function rotateAway(m: Float64Array, n: number, p: number, q: number, vectors: Float64Array): boolean {
  const off = m[p * n + q] as number;
  const mpp = m[p * n + p] as number;
  const mqq = m[q * n + q] as number;
  if (Math.abs(off) <= NEGLIGIBLE * Math.sqrt(Math.abs(mpp * mqq)) || off === 0) return false;
  const theta = (mqq - mpp) / (2 * off);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (let i = 0; i < n; i++) {
    const x = m[i * n + p] as number;
    const y = m[i * n + q] as number;
    m[i * n + p] = c * x - s * y;
    m[i * n + q] = s * x + c * y;
  }
  for (let i = 0; i < n; i++) {
    const x = m[p * n + i] as number;
    const y = m[q * n + i] as number;
    m[p * n + i] = c * x - s * y;
    m[q * n + i] = s * x + c * y;
    const u = vectors[i * n + p] as number;
    const v = vectors[i * n + q] as number;
    vectors[i * n + p] = c * u - s * v;
    vectors[i * n + q] = s * u + c * v;
  }
  m[p * n + q] = 0;
  m[q * n + p] = 0;
  return true;
}
