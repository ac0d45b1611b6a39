import { symmetricEigen } from '../../shared/solve/rod/symmetricEigen.ts';

/**
 * The slow twin of the rod's stability check: the Hessian of a free, weightless, held rod on its closure, dense and by
 * differences of an energy written anew. A shape is a row of unit edge directions; N up to about 30.
 */
export interface HeldShape {
  /** unit edge directions, x y z each */
  readonly edges: readonly (readonly number[])[];
  readonly start: readonly number[];
  readonly end: readonly number[];
  readonly lengthMm: number;
  readonly stiffnessNmm2: number;
  /** N, with which end B holds the rod */
  readonly endForceN: readonly number[];
}

const STEP = 1e-3;

function dot(a: readonly number[], b: readonly number[]): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}

/** Bending energy less the work of the end force: what is least, to second order, at a stable shape. */
function potential(shape: HeldShape, edges: readonly (readonly number[])[]): number {
  const l = shape.lengthMm / edges.length;
  const row = [shape.start, ...edges, shape.end];
  let energy = 0;
  for (let i = 1; i < row.length; i++) {
    const cell = i === 1 || i === row.length - 1 ? l / 2 : l;
    const half = Math.tan(Math.acos(Math.min(1, dot(row[i - 1]!, row[i]!))) / 2);
    energy += (2 * shape.stiffnessNmm2 * half * half) / cell;
  }
  for (const t of edges) energy -= l * dot(t, shape.endForceN);
  return energy;
}

function squarePair(t: readonly number[]): [number[], number[]] {
  const helper = Math.abs(t[2]!) < 0.7 ? [0, 0, 1] : [1, 0, 0];
  const along = dot(helper, t);
  const e = helper.map((h, i) => h - along * t[i]!);
  const norm = Math.hypot(...e);
  const a = e.map((v) => v / norm);
  const b = [t[1]! * a[2]! - t[2]! * a[1]!, t[2]! * a[0]! - t[0]! * a[2]!, t[0]! * a[1]! - t[1]! * a[0]!];
  return [a, b];
}

function moved(shape: HeldShape, turns: readonly number[]): number[][] {
  return shape.edges.map((t, k) => {
    const [a, b] = squarePair(t);
    const v = t.map((c, i) => c + turns[2 * k]! * a[i]! + turns[2 * k + 1]! * b[i]!);
    const norm = Math.hypot(...v);
    return v.map((c) => c / norm);
  });
}

/** Lowest eigenvalue of the Hessian on the closure's null space, times N L / EI (about the square of a wave number). */
export function lowestEigenvalue(shape: HeldShape): number {
  const n = 2 * shape.edges.length;
  const at = (i: number, si: number, j: number, sj: number): number => {
    const turns = new Array<number>(n).fill(0);
    turns[i] = turns[i]! + si * STEP;
    turns[j] = turns[j]! + sj * STEP;
    return potential(shape, moved(shape, turns));
  };
  const h = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      h[i * n + j] = (at(i, 1, j, 1) - at(i, 1, j, -1) - at(i, -1, j, 1) + at(i, -1, j, -1)) / (4 * STEP * STEP);
    }
  }
  return lowestOn(nullSpace(shape), h, n) * shape.edges.length * (shape.lengthMm / shape.stiffnessNmm2);
}

/** Orthonormal directions that leave the end where it is, by Gram-Schmidt after the three that do not. */
function nullSpace(shape: HeldShape): number[][] {
  const n = 2 * shape.edges.length;
  const pairs = shape.edges.map(squarePair);
  const rows = [0, 1, 2].map((c) => pairs.flatMap(([a, b]) => [a[c]!, b[c]!]));
  const kept: number[][] = [];
  const candidates = [...rows, ...Array.from({ length: n }, (_, i) => rows[0]!.map((_v, j) => (i === j ? 1 : 0)))];
  for (const candidate of candidates) {
    let v = candidate;
    for (let pass = 0; pass < 2; pass++) {
      for (const q of kept) {
        const along = v.reduce((sum, x, i) => sum + x * q[i]!, 0);
        v = v.map((x, i) => x - along * q[i]!);
      }
    }
    const norm = Math.sqrt(v.reduce((sum, x) => sum + x * x, 0));
    if (norm > 1e-6) kept.push(v.map((x) => x / norm));
  }
  return kept.slice(3);
}

function lowestOn(basis: readonly number[][], h: Float64Array, n: number): number {
  const m = basis.length;
  const reduced = new Float64Array(m * m);
  for (let i = 0; i < m; i++) {
    const hv = Array.from({ length: n }, (_, r) => basis[i]!.reduce((sum, x, c) => sum + h[r * n + c]! * x, 0));
    for (let j = 0; j < m; j++) reduced[i * m + j] = hv.reduce((sum, x, r) => sum + x * basis[j]![r]!, 0);
  }
  const values = new Float64Array(m);
  symmetricEigen(reduced, m, values, new Float64Array(m * m));
  return Math.min(...values);
}
