/**
 * Writhe of a closed polygon, exactly: every pair of edges adds the signed area of the directions in which they are seen
 * to cross (Klenin & Langowski, "Computation of writhe in modeling of supercoiled DNA", Biopolymers 54, 2000, method 1a).
 */
type Point = readonly [number, number, number];

function sub(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function unit(a: Point): Point {
  const size = Math.hypot(...a);
  return size === 0 ? a : [a[0] / size, a[1] / size, a[2] / size];
}

function arcsine(x: number): number {
  return Math.asin(Math.min(1, Math.max(-1, x)));
}

/** Signed area over 2 pi of edge p1 p2 seen from edge p3 p4. */
function crossing(p1: Point, p2: Point, p3: Point, p4: Point): number {
  const r13 = sub(p3, p1);
  const r14 = sub(p4, p1);
  const r23 = sub(p3, p2);
  const r24 = sub(p4, p2);
  const n1 = unit(cross(r13, r14));
  const n2 = unit(cross(r14, r24));
  const n3 = unit(cross(r24, r23));
  const n4 = unit(cross(r23, r13));
  const area = arcsine(dot(n1, n2)) + arcsine(dot(n2, n3)) + arcsine(dot(n3, n4)) + arcsine(dot(n4, n1));
  return (area / (2 * Math.PI)) * Math.sign(dot(cross(sub(p4, p3), sub(p2, p1)), r13));
}

/** @param points corners in order, the first not repeated at the end */
export function writhe(points: readonly Point[]): number {
  const n = points.length;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      sum += crossing(points[i]!, points[i + 1]!, points[j]!, points[(j + 1) % n]!);
    }
  }
  return sum;
}
