import { invariant } from '../base/invariant.ts';
import { distance, type Vec3 } from '../base/vec3.ts';
import { type CubicCurve, curveFromCoefficients } from './cubicCurve.ts';

/** A smooth curve through points that scatter about it. */
export interface SmoothedCurve {
  readonly curve: CubicCurve;
  /**
   * mm: how far a point lies off, root mean square, in each of the two directions across the path, as the points
   * themselves tell; what it is off along the path cannot be seen. 0 = the curve goes through all of them
   */
  readonly scatterMm: number;
  /** mm^3: the lambda that was chosen */
  readonly lambda: number;
}

/** Fewer points than this tell nothing of their own scatter: the curve goes through them. */
const LEAST_FOR_SCATTER = 8;
/**
 * Where points scatter by more than this share of their spacing, a free value counts so many times in the choice of
 * lambda, against following the scatter (Kim and Gu, J. R. Statist. Soc. B 66 (2004) 337); else that would round off bends.
 */
const CLOSE_SCATTER = 0.05;
const DEARER_FREEDOM = 1.4;
/** Smoothings tried, a factor of ten to the half apart, in units of the mean spacing cubed. */
const SMOOTHINGS = Array.from({ length: 25 }, (_, i) => 10 ** (-7 + i / 2));

/**
 * The natural cubic smoothing spline along measured points: of all curves the one with least sum of squared misses plus
 * lambda times the integral of the squared second derivative, its knots at the chords' sums. points: mm, any frame, two
 * or more, no two neighbours the same. lambda (mm^3) where given, else by generalised cross-validation, so that nothing
 * has to be known of the scatter. Method: Reinsch, Numer. Math. 10 (1967) 177; Craven and Wahba, Numer. Math. 31 (1979)
 * 377. Cost: the square of the count. Without scatter it goes through the points, with an error of fourth order in their spacing.
 */
export function smoothingSpline(points: readonly Vec3[], lambda?: number): SmoothedCurve {
  invariant(points.length >= 2, 'smoothingSpline: needs two points or more');
  const row: Row = {
    spacing: Float64Array.from(points.slice(1), (p, i) => distance(points[i] as Vec3, p)),
    coordinates: [0, 1, 2].map((axis) => Float64Array.from(points, (p) => p[axis] as number)),
  };
  if (lambda !== undefined || points.length < LEAST_FOR_SCATTER) {
    const given = lambda ?? 0;
    const by = smoother(row.spacing, given);
    const fitted = row.coordinates.map((values) => smoothed(by, values));
    return { curve: curveOf(fitted, row.spacing), scatterMm: 0, lambda: given };
  }
  const meanMm = row.spacing.reduce((sum, h) => sum + h, 0) / row.spacing.length;
  const tried = SMOOTHINGS.map((smoothing) => tryLambda(row, smoothing * meanMm ** 3));
  const wary = likeliest(tried, points.length, DEARER_FREEDOM);
  const best = wary.scatterMm > CLOSE_SCATTER * meanMm ? wary : likeliest(tried, points.length, 1);
  return { curve: curveOf(best.fitted, row.spacing), scatterMm: best.scatterMm, lambda: best.lambda };
}

interface Row {
  readonly spacing: Float64Array;
  readonly coordinates: readonly Float64Array[];
}

function tryLambda({ spacing, coordinates }: Row, lambda: number): Tried {
  const by = smoother(spacing, lambda);
  const fitted = coordinates.map((values) => smoothed(by, values));
  const missed = fitted.reduce((sum, { values }, axis) => sum + squaresApart(values, coordinates[axis] ?? values), 0);
  const count = spacing.length + 1;
  const freedom = freedomOf(by, count);
  return { lambda, fitted, freedom, missed, scatterMm: Math.sqrt(missed / 2 / (count - freedom)) };
}

/** The curve of one smoothing. missed: sum of squares of the distances from the points, mm^2. */
interface Tried {
  readonly lambda: number;
  readonly fitted: readonly Fitted[];
  readonly freedom: number;
  readonly missed: number;
  readonly scatterMm: number;
}

/** The curve with the least cross-validation score, a free value counting `price` times. */
function likeliest(tried: readonly Tried[], count: number, price: number): Tried {
  const score = ({ missed, freedom }: Tried): number => missed / Math.max(count - price * freedom, 0) ** 2;
  return tried.reduce((best, next) => (score(next) < score(best) ? next : best), tried[tried.length - 1] as Tried);
}

/** One coordinate of the curve: its values at the knots and its second derivatives there. */
interface Fitted {
  readonly values: Float64Array;
  readonly second: Float64Array;
}

/** Reinsch's equations for one lambda, (R + lambda Q'Q) second = Q' y, factored. Row i of Q' stands at 3 i. */
interface Smoother {
  readonly lambda: number;
  readonly inner: number;
  readonly rows: Float64Array;
  /** Cholesky's factor: element (i, i - back) at 3 i + back */
  readonly lower: Float64Array;
}

function smoother(spacing: Float64Array, lambda: number): Smoother {
  const inner = spacing.length - 1;
  const rows = new Float64Array(3 * Math.max(0, inner));
  for (let i = 0; i < inner; i++) {
    const before = 1 / (spacing[i] as number);
    const after = 1 / (spacing[i + 1] as number);
    rows.set([before, -before - after, after], 3 * i);
  }
  const lower = new Float64Array(rows.length);
  const below = (i: number, back: number): number => (back > 2 ? 0 : (lower[3 * i + back] as number));
  for (let i = 0; i < inner; i++)
    for (let back = Math.min(2, i); back >= 0; back--) {
      const j = i - back;
      let sum = stiffness(spacing, i, back) + lambda * overlap(rows, i, back);
      for (let k = Math.max(0, i - 2); k < j; k++) sum -= below(i, i - k) * below(j, j - k);
      lower[3 * i + back] = back === 0 ? Math.sqrt(sum) : sum / below(j, 0);
    }
  return { lambda, inner, rows, lower };
}

/** Element (i, i - back) of R: the second derivative runs straight between knots. */
function stiffness(spacing: Float64Array, i: number, back: number): number {
  if (back === 0) return ((spacing[i] as number) + (spacing[i + 1] as number)) / 3;
  return back === 1 ? (spacing[i] as number) / 6 : 0;
}

/** Element (i, i - back) of Q'Q. */
function overlap(rows: Float64Array, i: number, back: number): number {
  let sum = 0;
  for (let k = 0; k + back < 3; k++) sum += (rows[3 * i + k] as number) * (rows[3 * (i - back) + k + back] as number);
  return sum;
}

function solve({ inner, lower }: Smoother, right: Float64Array): Float64Array {
  const x = Float64Array.from(right);
  for (let i = 0; i < inner; i++) {
    for (let back = 1; back <= Math.min(2, i); back++)
      x[i] = (x[i] as number) - (lower[3 * i + back] as number) * (x[i - back] as number);
    x[i] = (x[i] as number) / (lower[3 * i] as number);
  }
  for (let i = inner - 1; i >= 0; i--) {
    for (let on = 1; on <= 2 && i + on < inner; on++)
      x[i] = (x[i] as number) - (lower[3 * (i + on) + on] as number) * (x[i + on] as number);
    x[i] = (x[i] as number) / (lower[3 * i] as number);
  }
  return x;
}

function smoothed(by: Smoother, y: Float64Array): Fitted {
  const right = new Float64Array(by.inner);
  for (let i = 0; i < by.inner; i++)
    for (let k = 0; k < 3; k++) right[i] = (right[i] as number) + (by.rows[3 * i + k] as number) * (y[i + k] as number);
  const inside = solve(by, right);
  const values = Float64Array.from(y);
  const second = new Float64Array(y.length);
  for (let i = 0; i < by.inner; i++) {
    second[i + 1] = inside[i] as number;
    for (let k = 0; k < 3; k++)
      values[i + k] = (values[i + k] as number) - by.lambda * (by.rows[3 * i + k] as number) * (inside[i] as number);
  }
  return { values, second };
}

/** The trace of the smoother: how many free values a curve of so many points has. */
function freedomOf(by: Smoother, count: number): number {
  let trace = count;
  const right = new Float64Array(by.inner);
  for (let point = 0; point < count; point++) {
    right.fill(0);
    for (let k = 0; k < 3; k++)
      if (point - k >= 0 && point - k < by.inner) right[point - k] = by.rows[3 * (point - k) + k] as number;
    const answer = solve(by, right);
    for (let k = 0; k < 3; k++)
      if (point - k >= 0 && point - k < by.inner)
        trace -= by.lambda * (by.rows[3 * (point - k) + k] as number) * (answer[point - k] as number);
  }
  return trace;
}

function squaresApart(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + (value - (b[i] as number)) ** 2, 0);
}

/** The cubic pieces of values and second derivatives at the knots. */
function curveOf(fitted: readonly Fitted[], spacing: Float64Array): CubicCurve {
  const coefficients = new Float64Array(spacing.length * 12);
  spacing.forEach((h, piece) => {
    fitted.forEach(({ values, second }, axis) => {
      const at = 12 * piece + axis;
      const rise = (values[piece + 1] as number) - (values[piece] as number);
      const bend0 = (second[piece] as number) * h * h;
      const bend1 = (second[piece + 1] as number) * h * h;
      coefficients[at] = values[piece] as number;
      coefficients[at + 3] = rise - bend0 / 3 - bend1 / 6;
      coefficients[at + 6] = bend0 / 2;
      coefficients[at + 9] = (bend1 - bend0) / 6;
    });
  });
  return curveFromCoefficients(coefficients);
}
