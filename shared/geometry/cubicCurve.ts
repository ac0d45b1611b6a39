import { invariant } from '../base/invariant.ts';
import { SAME_POINT_MM } from '../base/tolerances.ts';
import { distance, lengthOf, type Vec3 } from '../base/vec3.ts';

/**
 * A space curve of cubic pieces, in mm, bay frame. Piece i runs over u = 0..1; its coefficients stand at 12 i as
 * c0 xyz, c1 xyz, c2 xyz, c3 xyz of r(u) = c0 + c1 u + c2 u^2 + c3 u^3. Tangents run on from piece to piece;
 * curvature does too, except where a clamp or a socket holds the hose (an ideal rod's curvature steps there).
 */
export interface CubicCurve {
  readonly coefficients: Float64Array;
  /** arc length, mm, at the start of each piece and, last, at the end of the curve */
  readonly arcLengthMm: Float64Array;
}

export interface CurvePlace {
  point: Vec3;
  /** unit, the way arc length grows */
  tangent: Vec3;
  /** 1/mm */
  curvature: number;
}

/** Abscissae and weights of five-point Gauss-Legendre quadrature on [0, 1] (Abramowitz & Stegun 25.4.30, shifted). */
const GAUSS_NODES = [0.046910077030668, 0.2307653449471584, 0.5, 0.7692346550528415, 0.953089922969332];
const GAUSS_WEIGHTS = [
  0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945,
];

export function pieceCount(curve: CubicCurve): number {
  return curve.coefficients.length / 12;
}

export function curveLengthMm(curve: CubicCurve): number {
  return curve.arcLengthMm[curve.arcLengthMm.length - 1] as number;
}

/** A curve from its pieces' coefficients; arc lengths by five-point Gauss quadrature a piece (relative error about 1e-10 for a piece that turns 10 degrees). */
export function curveFromCoefficients(coefficients: Float64Array): CubicCurve {
  const pieces = coefficients.length / 12;
  const arcLengthMm = new Float64Array(pieces + 1);
  for (let i = 0; i < pieces; i++)
    arcLengthMm[i + 1] = (arcLengthMm[i] as number) + pieceLength(coefficients, i * 12, 1);
  return { coefficients, arcLengthMm };
}

/** One straight piece from a to b. */
export function straightCurve(a: Vec3, b: Vec3): CubicCurve {
  const c = new Float64Array(12);
  c.set(a, 0);
  c.set([b[0] - a[0], b[1] - a[1], b[2] - a[2]], 3);
  return curveFromCoefficients(c);
}

/** Curves one after the other; each must start where the one before ends. */
export function joinCurves(curves: readonly CubicCurve[]): CubicCurve {
  const total = curves.reduce((n, c) => n + c.coefficients.length, 0);
  const all = new Float64Array(total);
  let at = 0;
  for (const c of curves) {
    invariant(
      at === 0 || jointGapMm(all, at, c) < SAME_POINT_MM,
      'joinCurves: a curve does not start where the last one ends',
    );
    all.set(c.coefficients, at);
    at += c.coefficients.length;
  }
  return curveFromCoefficients(all);
}

/** Distance between the end of what is joined so far and the start of the next curve. */
function jointGapMm(joined: Float64Array, at: number, next: CubicCurve): number {
  const last = placeOnPiece(joined, at - 12, 1).point;
  return distance(last, placeOnPiece(next.coefficients, 0, 0).point);
}

/**
 * The twice continuously differentiable cubic spline through equally spaced nodes, with given end directions.
 * nodes: x, y, z of n + 1 points, mm; spacingMm: arc length between neighbours; startTangent, endTangent: unit.
 * Method: clamped interpolating spline on a uniform knot row, tridiagonal solve for the nodes' derivatives
 * (de Boor, A Practical Guide to Splines, ch. IV). Error against a smooth curve: fourth order in the spacing.
 */
export function splineThrough(
  nodes: Float64Array,
  spacingMm: number,
  startTangent: Vec3,
  endTangent: Vec3,
): CubicCurve {
  const n = nodes.length / 3 - 1;
  invariant(n >= 1, 'splineThrough: needs two nodes or more');
  return curveOfSlopes(nodes, splineSlopes(nodes, spacingMm, startTangent, endTangent), () => spacingMm);
}

/**
 * As `splineThrough`, for nodes at any distances: the knots stand at the chords' sums, which for nodes of a smooth curve is
 * its arc length to third order. nodes: two points or more, no two neighbours the same.
 */
export function splineAlong(nodes: Float64Array, startTangent: Vec3, endTangent: Vec3): CubicCurve {
  const n = nodes.length / 3 - 1;
  invariant(n >= 1, 'splineAlong: needs two nodes or more');
  const spacing = Float64Array.from({ length: n }, (_, i) =>
    lengthOf(
      nodes[3 * i + 3]! - nodes[3 * i]!,
      nodes[3 * i + 4]! - nodes[3 * i + 1]!,
      nodes[3 * i + 5]! - nodes[3 * i + 2]!,
    ),
  );
  const slopes = unevenSlopes(nodes, spacing, startTangent, endTangent);
  return curveOfSlopes(nodes, slopes, (i) => spacing[i] as number);
}

/** The cubic pieces through nodes with given derivatives there (Hermite). spacingMm: knots' distance of each piece. */
function curveOfSlopes(nodes: Float64Array, slopes: Float64Array, spacingMm: (piece: number) => number): CubicCurve {
  const n = nodes.length / 3 - 1;
  const coefficients = new Float64Array(n * 12);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < 3; k++) {
      const h = spacingMm(i);
      const p0 = nodes[3 * i + k] as number;
      const p1 = nodes[3 * i + 3 + k] as number;
      const m0 = (slopes[3 * i + k] as number) * h;
      const m1 = (slopes[3 * i + 3 + k] as number) * h;
      const at = 12 * i + k;
      coefficients[at] = p0;
      coefficients[at + 3] = m0;
      coefficients[at + 6] = 3 * (p1 - p0) - 2 * m0 - m1;
      coefficients[at + 9] = 2 * (p0 - p1) + m0 + m1;
    }
  return curveFromCoefficients(coefficients);
}

/** Derivatives at the nodes for equal second derivatives from both sides; tridiagonal, as de Boor, ch. IV. */
function unevenSlopes(nodes: Float64Array, spacing: Float64Array, start: Vec3, end: Vec3): Float64Array {
  const n = spacing.length;
  const slopes = new Float64Array(nodes.length);
  slopes.set(start, 0);
  slopes.set(end, 3 * n);
  const sweep = new Float64Array(n + 1);
  for (let i = 1; i < n; i++) {
    const before = 1 / (spacing[i - 1] as number);
    const after = 1 / (spacing[i] as number);
    const pivot = 2 * (before + after) - (i > 1 ? before * (sweep[i - 1] as number) : 0);
    sweep[i] = after / pivot;
    for (let k = 0; k < 3; k++) {
      const p = nodes[3 * i + k] as number;
      const rise =
        3 *
        (((nodes[3 * i + 3 + k] as number) - p) * after ** 2 + (p - (nodes[3 * i - 3 + k] as number)) * before ** 2);
      const last = i === n - 1 ? after * (slopes[3 * n + k] as number) : 0;
      slopes[3 * i + k] = (rise - last - before * (slopes[3 * i - 3 + k] as number)) / pivot;
    }
  }
  for (let i = n - 2; i >= 1; i--)
    for (let k = 0; k < 3; k++)
      slopes[3 * i + k] = (slopes[3 * i + k] as number) - (sweep[i] as number) * (slopes[3 * i + 3 + k] as number);
  return slopes;
}

function splineSlopes(nodes: Float64Array, h: number, start: Vec3, end: Vec3): Float64Array {
  const n = nodes.length / 3 - 1;
  const slopes = new Float64Array(nodes.length);
  slopes.set(start, 0);
  slopes.set(end, 3 * n);
  const sweep = new Float64Array(n + 1);
  for (let i = 1; i < n; i++) {
    const pivot = 4 - (i > 1 ? (sweep[i - 1] as number) : 0);
    sweep[i] = 1 / pivot;
    for (let k = 0; k < 3; k++) {
      const right = (3 * ((nodes[3 * i + 3 + k] as number) - (nodes[3 * i - 3 + k] as number))) / h;
      const last = i === n - 1 ? (slopes[3 * n + k] as number) : 0;
      slopes[3 * i + k] = (right - last - (slopes[3 * i - 3 + k] as number)) / pivot;
    }
  }
  for (let i = n - 2; i >= 1; i--)
    for (let k = 0; k < 3; k++)
      slopes[3 * i + k] = (slopes[3 * i + k] as number) - (sweep[i] as number) * (slopes[3 * i + 3 + k] as number);
  return slopes;
}

/** Point, unit tangent and curvature at an arc length, mm from the start; held within the curve. */
export function curveAt(curve: CubicCurve, arcLengthMm: number): CurvePlace {
  const { piece, u } = locate(curve, arcLengthMm);
  return placeOnPiece(curve.coefficients, piece * 12, u);
}

/** Piece number and its own parameter at an arc length. Newton on the piece's length, at most eight steps. */
export function locate(curve: CubicCurve, arcLengthMm: number): { piece: number; u: number } {
  const lengths = curve.arcLengthMm;
  const s = Math.min(Math.max(arcLengthMm, 0), curveLengthMm(curve));
  let low = 0;
  let high = lengths.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((lengths[middle] as number) <= s) low = middle;
    else high = middle - 1;
  }
  const from = lengths[low] as number;
  const whole = (lengths[low + 1] as number) - from;
  if (whole <= 0) return { piece: low, u: 0 };
  let u = (s - from) / whole;
  for (let step = 0; step < 8; step++) {
    const off = pieceLength(curve.coefficients, low * 12, u) - (s - from);
    if (Math.abs(off) < whole * 1e-12) break;
    u = Math.min(1, Math.max(0, u - off / speedAt(curve.coefficients, low * 12, u)));
  }
  return { piece: low, u };
}

function placeOnPiece(c: Float64Array, at: number, u: number): CurvePlace {
  const p = [0, 0, 0];
  const d = [0, 0, 0];
  const dd = [0, 0, 0];
  for (let k = 0; k < 3; k++) {
    const c1 = c[at + 3 + k] as number;
    const c2 = c[at + 6 + k] as number;
    const c3 = c[at + 9 + k] as number;
    p[k] = (c[at + k] as number) + u * (c1 + u * (c2 + u * c3));
    d[k] = c1 + u * (2 * c2 + 3 * u * c3);
    dd[k] = 2 * c2 + 6 * u * c3;
  }
  const [dx, dy, dz] = d as [number, number, number];
  const [ex, ey, ez] = dd as [number, number, number];
  const speed = lengthOf(dx, dy, dz);
  const bend = lengthOf(dy * ez - dz * ey, dz * ex - dx * ez, dx * ey - dy * ex);
  return {
    point: p as unknown as Vec3,
    tangent: [dx / speed, dy / speed, dz / speed],
    curvature: bend / (speed * speed * speed),
  };
}

function speedAt(c: Float64Array, at: number, u: number): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const v = (c[at + 3 + k] as number) + u * (2 * (c[at + 6 + k] as number) + 3 * u * (c[at + 9 + k] as number));
    sum += v * v;
  }
  return Math.sqrt(sum);
}

function pieceLength(c: Float64Array, at: number, upTo: number): number {
  let sum = 0;
  for (let g = 0; g < 5; g++) sum += (GAUSS_WEIGHTS[g] as number) * speedAt(c, at, upTo * (GAUSS_NODES[g] as number));
  return sum * upTo;
}

/** The curve walked the other way. */
export function reversedCurve(curve: CubicCurve): CubicCurve {
  const n = pieceCount(curve);
  const out = new Float64Array(n * 12);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < 3; k++) {
      const at = 12 * (n - 1 - i) + k;
      const [c0, c1, c2, c3] = [0, 3, 6, 9].map((o) => curve.coefficients[at + o] as number) as [
        number,
        number,
        number,
        number,
      ];
      out.set([c0 + c1 + c2 + c3], 12 * i + k);
      out.set([-c1 - 2 * c2 - 3 * c3], 12 * i + 3 + k);
      out.set([c2 + 3 * c3], 12 * i + 6 + k);
      out.set([-c3], 12 * i + 9 + k);
    }
  return curveFromCoefficients(out);
}
