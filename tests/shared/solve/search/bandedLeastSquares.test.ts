import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { BandedLeastSquares } from '../../../../shared/solve/search/bandedLeastSquares.ts';

/** Gauss-Jordan elimination with pivots: slow, and nothing in common with the code under test. */
function solveDense(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let c = 0; c < n; c++) {
    const pivot = rows
      .slice(c)
      .reduce((best, row, i) => (Math.abs(row[c]!) > Math.abs(rows[best]![c]!) ? c + i : best), c);
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const factor = rows[r]![c]! / rows[c]![c]!;
      for (let k = c; k <= n; k++) rows[r]![k]! -= factor * rows[c]![k]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}

it('solves random problems as dense elimination does, held unknowns left out', () => {
  const random = seededRandom(8);
  for (let problem = 0; problem < 20; problem++) {
    const size = 9 + Math.floor(20 * random());
    const width = 4;
    const system = new BandedLeastSquares(size, width);
    const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
    const right = new Array<number>(size).fill(0);
    for (let term = 0; term < 3 * size; term++) {
      const first = Math.floor(random() * (size + 2)) - 2;
      const unknowns = Array.from({ length: width + 1 }, (_, i) => first + i);
      const gradient = unknowns.map(() => random() - 0.5);
      const [weight, residual] = [random() + 0.1, random() - 0.5];
      system.add(weight, residual, first, gradient);
      unknowns.forEach((i, a) => {
        if (i < 0 || i >= size) return;
        right[i]! -= weight * gradient[a]! * residual;
        unknowns.forEach((j, b) => {
          if (j >= 0 && j < size) matrix[i]![j]! += weight * gradient[a]! * gradient[b]!;
        });
      });
    }
    matrix.forEach((row, i) => {
      row[i]! += 0.01;
    });
    const expected = solveDense(matrix, right);
    const got = system.solve(0.01)!;
    for (let i = 0; i < size; i++) expect(got[i]).toBeCloseTo(expected[i]!, 8);
  }
});

it('answers nothing where the matrix is not positive', () => {
  const system = new BandedLeastSquares(6, 2);
  system.add(1, 1, 0, [1, -1]);
  expect(system.solve(0)).toBeUndefined();
});
