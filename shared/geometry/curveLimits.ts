import { addScaled, cross, dot, length, type Vec3 } from '../base/vec3.ts';
import { type CubicCurve, curveAt, pieceCount } from './cubicCurve.ts';

/** The least of something along a curve, with a proof: the true least lies in [provenAtLeast, found]. */
export interface LeastAlong {
  readonly found: number;
  readonly provenAtLeast: number;
  readonly arcLengthMm: number;
  readonly point: Vec3;
}

/**
 * The least radius of curvature of a curve, mm, with a proven lower bound.
 * relativeGap: how far below the found value the proof may lie (0.001 = 0.1 %).
 * Method: branch and bound over each piece's parameter with the Bezier hulls of r' and r' x r''; bisect until met.
 */
export function leastRadius(curve: CubicCurve, relativeGap: number): LeastAlong {
  let worst = 0;
  let proven = 0;
  let where = { piece: 0, u: 0 };
  for (let piece = 0; piece < pieceCount(curve); piece++)
    for (const u of [0, 0.5, 1]) {
      const k = curvatureOnPiece(curve.coefficients, piece * 12, u);
      if (k > worst) {
        worst = k;
        where = { piece, u };
      }
    }
  for (let piece = 0; piece < pieceCount(curve); piece++) {
    const stack: [number, number, number][] = [[0, 1, 0]];
    while (stack.length > 0) {
      const [u0, u1, depth] = stack.pop() as [number, number, number];
      const bound = curvatureBound(curve.coefficients, piece * 12, u0, u1);
      if (bound <= worst * (1 + relativeGap) || depth > 24) {
        proven = Math.max(proven, bound);
        continue;
      }
      const middle = (u0 + u1) / 2;
      const k = curvatureOnPiece(curve.coefficients, piece * 12, middle);
      if (k > worst) {
        worst = k;
        where = { piece, u: middle };
      }
      stack.push([u0, middle, depth + 1], [middle, u1, depth + 1]);
    }
  }
  const from = curve.arcLengthMm[where.piece] as number;
  const to = curve.arcLengthMm[where.piece + 1] as number;
  const arcLengthMm = from + (to - from) * where.u;
  return {
    found: 1 / worst,
    provenAtLeast: 1 / Math.max(proven, worst),
    arcLengthMm,
    point: curveAt(curve, arcLengthMm).point,
  };
}

/**
 * An upper bound on the curvature of a piece over [u0, u1]. Both r' and r' x r'' are quadratic in u, so each lies in the
 * hull of its three Bezier control points there: max|r' x r''| / min|r'|^3, the least |r'| taken along its mean direction.
 */
function curvatureBound(c: Float64Array, at: number, u0: number, u1: number): number {
  const half = (u1 - u0) / 2;
  const first = tangentAt(c, at, u0);
  const second = secondAt(c, at, u0);
  const last = tangentAt(c, at, u1);
  const mean = tangentAt(c, at, (u0 + u1) / 2);
  const size = length(mean);
  if (size === 0) return Number.POSITIVE_INFINITY;
  const least = Math.min(...[first, addScaled(first, second, half), last].map((v) => dot(v, mean))) / size;
  if (least <= 0) return Number.POSITIVE_INFINITY;
  const start = cross(first, second);
  // The derivative of r' x r'' is r' x the third derivative, since r'' x r'' = 0.
  const slope = cross(first, thirdOf(c, at));
  const end = cross(last, secondAt(c, at, u1));
  return Math.max(length(start), length(addScaled(start, slope, half)), length(end)) / least ** 3;
}

function tangentAt(c: Float64Array, at: number, u: number): Vec3 {
  return [slopeOf(c, at, u), slopeOf(c, at + 1, u), slopeOf(c, at + 2, u)];
}

function slopeOf(c: Float64Array, at: number, u: number): number {
  return (c[at + 3] as number) + u * (2 * (c[at + 6] as number) + 3 * u * (c[at + 9] as number));
}

function secondAt(c: Float64Array, at: number, u: number): Vec3 {
  return [bendOf(c, at, u), bendOf(c, at + 1, u), bendOf(c, at + 2, u)];
}

function bendOf(c: Float64Array, at: number, u: number): number {
  return 2 * (c[at + 6] as number) + 6 * u * (c[at + 9] as number);
}

function thirdOf(c: Float64Array, at: number): Vec3 {
  return [6 * (c[at + 9] as number), 6 * (c[at + 10] as number), 6 * (c[at + 11] as number)];
}

function curvatureOnPiece(c: Float64Array, at: number, u: number): number {
  const first = tangentAt(c, at, u);
  return length(cross(first, secondAt(c, at, u))) / length(first) ** 3;
}

/** A function of place. */
export interface ValueOfPlace {
  /** The value there; any of at least `upTo`, also Infinity, once it is known to be at least that. */
  valueAt(point: Vec3, upTo: number): number;
}

/**
 * The least value along [fromMm, toMm] of a curve of a function of place that changes at most `lipschitz` per mm moved,
 * with a proven lower bound within `gap`. Infinity = nothing there. belowMm: only values below it are looked for, which is sooner
 * told; where there is none, Infinity is found, at the start, and proven is at least belowMm less the gap.
 * Method: branch and bound on arc length: a stretch of half-length h about a place of value v holds nothing below
 * v - lipschitz h. Cost grows with the length that runs close, not with the length of the curve.
 */
export function leastAlong(
  curve: CubicCurve,
  fromMm: number,
  toMm: number,
  value: ValueOfPlace,
  lipschitz: number,
  gap: number,
  belowMm = Number.POSITIVE_INFINITY,
): LeastAlong {
  let found = belowMm;
  let isThere = false;
  let at = fromMm;
  let point = curveAt(curve, fromMm).point;
  let provenAtLeast = Number.POSITIVE_INFINITY;
  const look = (s: number, reach: number): number => {
    const p = curveAt(curve, s).point;
    const v = value.valueAt(p, found + reach);
    if (v < found) {
      found = v;
      isThere = true;
      at = s;
      point = p;
    }
    return v;
  };
  look(fromMm, 0);
  look(toMm, 0);
  const first = Math.max(1, Math.ceil((toMm - fromMm) / 64));
  const stack: [number, number][] = [];
  for (let i = first - 1; i >= 0; i--)
    stack.push([fromMm + ((toMm - fromMm) * i) / first, fromMm + ((toMm - fromMm) * (i + 1)) / first]);
  while (stack.length > 0) {
    const [s0, s1] = stack.pop() as [number, number];
    const reach = (lipschitz * (s1 - s0)) / 2;
    const bound = look((s0 + s1) / 2, reach) - reach;
    if (bound >= found - gap) provenAtLeast = Math.min(provenAtLeast, bound);
    else {
      const middle = (s0 + s1) / 2;
      stack.push([middle, s1], [s0, middle]);
    }
  }
  provenAtLeast = Math.min(provenAtLeast, found);
  return { found: isThere ? found : Number.POSITIVE_INFINITY, provenAtLeast, arcLengthMm: at, point };
}
