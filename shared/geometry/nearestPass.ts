import { addScaled, distance, dot, sub, type Vec3 } from '../base/vec3.ts';

/** Two places of one line, by length along it, and how far apart they are. */
export interface Pass {
  readonly distance: number;
  readonly here: { readonly along: number; readonly point: Vec3 };
  readonly there: { readonly along: number; readonly point: Vec3 };
}

/**
 * Where a line comes nearest to itself: the least distance between two of its legs that lie at least `apart` from each other
 * along it, or nothing where it is too short to have such legs. One unit throughout, any frame. `along`: the length along the
 * line at each point, rising by no less than the leg is long, as arc length does. Legs nearer along it than `apart` are not
 * compared, so that a bend is not taken for a pass.
 * Method: segment against segment, in closed form. A leg n further on can be nearer by no more than n times the longest leg,
 * so legs that cannot be nearer than the best are stepped over; exact to rounding.
 */
export function nearestPass(points: readonly Vec3[], along: readonly number[], apart: number): Pass | undefined {
  const last = points.length - 1;
  const longest = along.reduce((most, s, i) => Math.max(most, s - (along[i - 1] ?? s)), 0);
  if (!(longest > 0)) return undefined;
  let best: Pass | undefined;
  for (let i = 0; i < last; i++) {
    let j = i + 1;
    while (j < last) {
      const between = at(along, j) - at(along, i + 1);
      if (between < apart) {
        j++;
        continue;
      }
      const pass = legPass(points, along, i, j);
      if (best === undefined || pass.distance < best.distance) best = pass;
      j += 1 + Math.floor((pass.distance - best.distance) / longest);
    }
  }
  return best;
}

function legPass(points: readonly Vec3[], along: readonly number[], i: number, j: number): Pass {
  const [a, b, c, d] = [points[i], points[i + 1], points[j], points[j + 1]] as [Vec3, Vec3, Vec3, Vec3];
  const [s, t] = nearestPlaces(a, b, c, d);
  const here = { along: between(at(along, i), at(along, i + 1), s), point: addScaled(a, sub(b, a), s) };
  const there = { along: between(at(along, j), at(along, j + 1), t), point: addScaled(c, sub(d, c), t) };
  return { distance: distance(here.point, there.point), here, there };
}

/**
 * The places along two segments, 0 to 1 each, where they come nearest. The distance is convex in both places, so it is least
 * where neither can be bettered alone: inside both, where the lines cross or pass, else with one place at an end of its
 * segment and the other the nearest to that end.
 */
function nearestPlaces(a: Vec3, b: Vec3, c: Vec3, d: Vec3): [number, number] {
  const [u, v, w] = [sub(b, a), sub(d, c), sub(a, c)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const squareness = uu * vv - uv * uv;
  const inner: [number, number] = [(uv * vw - vv * uw) / squareness, (uu * vw - uv * uw) / squareness];
  const edges: [number, number][] = [
    [0, held(vw / vv)],
    [1, held((vw + uv) / vv)],
    [held(-uw / uu), 0],
    [held((uv - uw) / uu), 1],
  ];
  const inside = inner.every((place) => place >= 0 && place <= 1);
  const places = inside ? [inner, ...edges] : edges;
  const apart = ([s, t]: [number, number]): number => distance(addScaled(a, u, s), addScaled(c, v, t));
  return places.reduce((least, place) => (apart(place) < apart(least) ? place : least));
}

/** Kept on its segment; one without length is its first point. */
function held(place: number): number {
  return place > 0 ? Math.min(1, place) : 0;
}

function between(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}

function at(values: readonly number[], i: number): number {
  return values[i] as number;
}
