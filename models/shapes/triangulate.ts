import type { Outline } from './outline.ts';

type Point = readonly [number, number];

/** Triangles of a simple counter-clockwise outline by ear clipping, as numbers of its points. */
export function triangulate(outline: Outline): [number, number, number][] {
  const left = outline.map((_, i) => i);
  const triangles: [number, number, number][] = [];
  while (left.length > 3) {
    const ear = bestEar(outline, left);
    const n = left.length;
    triangles.push([left[(ear + n - 1) % n] as number, left[ear] as number, left[(ear + 1) % n] as number]);
    left.splice(ear, 1);
  }
  triangles.push([left[0] as number, left[1] as number, left[2] as number]);
  return triangles;
}

/** The same for an outline whichever way round it runs; the triangles run the way the outline does. */
export function triangulateEitherWay(outline: Outline): [number, number, number][] {
  const area = outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length] as Point;
    return sum + p[0] * q[1] - q[0] * p[1];
  }, 0);
  if (area >= 0) return triangulate(outline);
  const last = outline.length - 1;
  const flip = (i: number): number => last - i;
  return triangulate([...outline].reverse()).map(([a, b, c]) => [flip(a), flip(c), flip(b)]);
}

/** The first ear; where rounding leaves none, the most convex corner. */
function bestEar(outline: Outline, left: readonly number[]): number {
  let fallback = 0;
  let most = Number.NEGATIVE_INFINITY;
  const n = left.length;
  for (let i = 0; i < n; i++) {
    const a = outline[left[(i + n - 1) % n] as number] as Point;
    const b = outline[left[i] as number] as Point;
    const c = outline[left[(i + 1) % n] as number] as Point;
    const turn = area2(a, b, c);
    if (turn > most) [most, fallback] = [turn, i];
    if (turn > 0 && !left.some((p) => strictlyInside(outline[p] as Point, a, b, c))) return i;
  }
  return fallback;
}

function area2(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function same(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function strictlyInside(p: Point, a: Point, b: Point, c: Point): boolean {
  if (same(p, a) || same(p, b) || same(p, c)) return false;
  return area2(a, b, p) >= 0 && area2(b, c, p) >= 0 && area2(c, a, p) >= 0;
}

/**
 * One outline that runs into every hole and back along a slit. Answers the numbers of the points in `[outline, ...holes]`
 * laid end to end; holes are given counter-clockwise and walked backwards.
 */
export function withHoles(outline: Outline, holes: readonly Outline[]): { points: Outline; numbers: number[] } {
  const all: Point[] = [...outline];
  let chain = outline.map((_, i) => i);
  for (const hole of [...holes].sort((a, b) => rightmost(b) - rightmost(a))) {
    const first = all.length;
    all.push(...hole);
    const numbers = hole.map((_, i) => first + hole.length - 1 - i);
    chain = slit(all, chain, numbers);
  }
  return { points: all, numbers: chain };
}

function rightmost(hole: Outline): number {
  return Math.max(...hole.map(([u]) => u));
}

function slit(all: readonly Point[], chain: readonly number[], hole: readonly number[]): number[] {
  let best: { i: number; j: number; d: number } | undefined;
  for (let j = 0; j < hole.length; j++) {
    for (let i = 0; i < chain.length; i++) {
      const a = all[chain[i] as number] as Point;
      const b = all[hole[j] as number] as Point;
      const d = Math.hypot(a[0] - b[0], a[1] - b[1]);
      if ((best === undefined || d < best.d) && !crosses(all, chain, a, b)) best = { i, j, d };
    }
  }
  if (best === undefined) throw new Error('slit: a hole lies outside its outline');
  const { i, j } = best;
  return [...chain.slice(0, i + 1), ...hole.slice(j), ...hole.slice(0, j + 1), ...chain.slice(i)];
}

function crosses(all: readonly Point[], chain: readonly number[], a: Point, b: Point): boolean {
  return chain.some((from, k) => {
    const p = all[from] as Point;
    const q = all[chain[(k + 1) % chain.length] as number] as Point;
    if (same(p, a) || same(q, a)) return false;
    return area2(p, q, a) * area2(p, q, b) < 0 && area2(a, b, p) * area2(a, b, q) < 0;
  });
}
