import { wrapRadians } from '../../base/turnRange.ts';
import { lengthOf } from '../../base/vec3.ts';
import { type Arc, ROUND_RAD, WHOLE_ROUND } from './arcs.ts';
import type { Flat, Shadow } from './layer.ts';

/**
 * A bar that turns about the axis of a layer, with a head round the axis: a disc cut off straight on the side away from the
 * bar, where its jaw is open. mm.
 *
 *        .--.
 *      /     +-------------------)
 *     |   o  |  bar, length from o )      o = the axis
 *      \     +-------------------)
 *     |  '--'
 *     cut
 */
export interface Bar {
  /** never less than half the width of the bar */
  readonly headRadiusMm: number;
  /** from the axis to where the head is cut off */
  readonly cutMm: number;
  readonly halfWidthMm: number;
  /** from the axis to the bar's end, which is round about the axis */
  readonly lengthMm: number;
  /** what keeps within this of the axis is the nut and what it is screwed on, and in nobody's way */
  readonly withinNutMm: number;
}

/**
 * The clocks at which a turning bar meets a shadow, rad: none, the arc that its head takes, the arc that the bar takes.
 * A point at distance r and clock c takes c +- asin(w / r) beyond the head, w half the bar's width, and
 * c +- (pi/2 + asin(cut / r)) within it; along a straight edge both have their extremes at the ends of the edge or where
 * it passes the end of the bar or the rim of the head. Exact for an outline. A disc of radius q takes asin((w + q) / r), less
 * where it lies across the bar's end, and is taken as wholly in the head where it reaches into it: never too little.
 */
export function blockedClocks(bar: Bar, shadow: Shadow): Arc[] {
  return 'outline' in shadow ? byOutline(bar, shadow.outline) : byDisc(bar, shadow.centre, shadow.radiusMm);
}

function byDisc(bar: Bar, centre: Flat, radiusMm: number): Arc[] {
  const r = lengthOf(centre.x, centre.y);
  const about = Math.atan2(centre.y, centre.x);
  if (r + radiusMm <= bar.withinNutMm || r - radiusMm >= bar.lengthMm) return [];
  const arcs: Arc[] = [];
  if (r - radiusMm < bar.headRadiusMm) {
    const half = beyondCut(bar.cutMm + radiusMm, r);
    arcs.push(arcRound(about, -half, half));
  }
  if (r + radiusMm > bar.headRadiusMm) {
    const half = besideBar(bar, r, radiusMm);
    arcs.push(arcRound(about, -half, half));
  }
  return arcs;
}

/** Half the arc in which a point at distance r is on the head's side of its cut, rad. */
function beyondCut(cutMm: number, r: number): number {
  return Math.PI / 2 + Math.asin(Math.min(1, cutMm / r));
}

function besideBar(bar: Bar, r: number, radiusMm: number): number {
  const reach = bar.halfWidthMm + radiusMm;
  if (reach >= r) return Math.PI;
  // Where the disc touches the bar's side, unless that is beyond the bar's end.
  const touchMm = lengthOf(Math.sqrt(r * r - reach * reach), bar.halfWidthMm);
  return touchMm <= bar.lengthMm ? Math.asin(reach / r) : acrossEnd(bar, r, radiusMm);
}

function acrossEnd({ lengthMm, halfWidthMm }: Bar, r: number, radiusMm: number): number {
  const cosine = (r * r + lengthMm * lengthMm - radiusMm * radiusMm) / (2 * r * lengthMm);
  return Math.acos(Math.min(1, cosine)) + Math.asin(Math.min(1, halfWidthMm / lengthMm));
}

function byOutline(bar: Bar, outline: readonly Flat[]): Arc[] {
  if (outline.every(({ x, y }) => lengthOf(x, y) <= bar.withinNutMm)) return [];
  const nearest = nearestOfOutline(outline);
  const leastMm = lengthOf(nearest.x, nearest.y);
  if (leastMm >= bar.lengthMm) return [];
  if (leastMm <= bar.cutMm) return [WHOLE_ROUND];
  const head = arcOfRing(outline, nearest, [0, bar.headRadiusMm], (r) => beyondCut(bar.cutMm, r));
  const beyond = arcOfRing(outline, nearest, [bar.headRadiusMm, bar.lengthMm], (r) =>
    Math.asin(Math.min(1, bar.halfWidthMm / r)),
  );
  return [...head, ...beyond];
}

/** The arc taken by what of an outline lies in a ring about the axis, each of its points by half(r) to both sides. */
function arcOfRing(
  outline: readonly Flat[],
  nearest: Flat,
  [innerMm, outerMm]: readonly [number, number],
  half: (r: number) => number,
): Arc[] {
  const inRing = (at: Flat): boolean => {
    const r = lengthOf(at.x, at.y);
    return r >= innerMm && r <= outerMm;
  };
  const edges = outline.map((to, i) => [outline.at(i - 1) as Flat, to] as const);
  const extremes = [
    ...[nearest, ...outline].filter(inRing),
    ...edges.flatMap(([from, to]) => [...crossings(from, to, innerMm), ...crossings(from, to, outerMm)]),
  ];
  if (extremes.length === 0) return [];
  const about = Math.atan2(nearest.y, nearest.x);
  const [cosine, sine] = [Math.cos(about), Math.sin(about)];
  let low = Infinity;
  let high = -Infinity;
  for (const { x, y } of extremes) {
    const on = Math.atan2(y * cosine - x * sine, x * cosine + y * sine);
    const halfRad = half(lengthOf(x, y));
    low = Math.min(low, on - halfRad);
    high = Math.max(high, on + halfRad);
  }
  return [arcRound(about, low, high)];
}

function arcRound(about: number, low: number, high: number): Arc {
  return high - low >= ROUND_RAD ? WHOLE_ROUND : { from: wrapRadians(about + low), width: high - low };
}

/** The point of a convex outline nearest to the axis; the axis itself where it is inside. */
function nearestOfOutline(outline: readonly Flat[]): Flat {
  let best: Flat = outline[0] as Flat;
  let least = Infinity;
  const turns = new Set<number>();
  let edges = 0;
  outline.forEach((to, i) => {
    const from = outline.at(i - 1) as Flat;
    const near = nearestOnEdge(from, to);
    const squared = near.x * near.x + near.y * near.y;
    if (squared < least) {
      least = squared;
      best = near;
    }
    if (from.x === to.x && from.y === to.y) return;
    turns.add(Math.sign(from.x * to.y - from.y * to.x));
    edges++;
  });
  return edges > 2 && turns.size === 1 && !turns.has(0) ? { x: 0, y: 0 } : best;
}

function nearestOnEdge(from: Flat, to: Flat): Flat {
  const [ex, ey] = [to.x - from.x, to.y - from.y];
  const squared = ex * ex + ey * ey;
  const t = squared > 0 ? Math.min(1, Math.max(0, -(from.x * ex + from.y * ey) / squared)) : 0;
  return { x: from.x + ex * t, y: from.y + ey * t };
}

/** Where an edge crosses the circle of a radius about the axis: none, one or two places. */
function crossings(from: Flat, to: Flat, radiusMm: number): Flat[] {
  const [ex, ey] = [to.x - from.x, to.y - from.y];
  const a = ex * ex + ey * ey;
  const b = from.x * ex + from.y * ey;
  const c = from.x * from.x + from.y * from.y - radiusMm * radiusMm;
  const root = b * b - a * c;
  if (!(a > 0) || root < 0) return [];
  return [(-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a]
    .filter((t) => t >= 0 && t <= 1)
    .map((t) => ({ x: from.x + ex * t, y: from.y + ey * t }));
}
