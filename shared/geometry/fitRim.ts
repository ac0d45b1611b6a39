import { type RandomSource, seededRandom } from '../base/random.ts';
import { addScaled, anySquareTo, cross, distance, dot, lerp, scale, sub, type Vec3 } from '../base/vec3.ts';
import { circleThrough, distanceToCircle, fitCircle, type SpaceCircle, type WeighedPoint } from './fitCircle.ts';
import { type RimEdge, rimEdges } from './rimEdges.ts';
import type { TriMesh } from './triMesh.ts';

/** A round rim on a mesh: the mouth of a bore, the end of a tube, the face of a boss. */
export interface Rim extends SpaceCircle {
  /** share of the circle, 0 to 1, that has an edge of the mesh on it */
  readonly roundShare: number;
  /** root mean square distance of those edges' vertices from the circle, mm */
  readonly roughnessMm: number;
}

export interface RimSearch {
  /** mm from the place within which edges are looked at; a rim has to lie in it nearly whole */
  readonly reachMm: number;
  readonly leastRadiusMm: number;
  readonly mostRadiusMm: number;
  /** mm that the place may be off the rim's line; or the rim's own radius and a quarter, if that is more: a click into a bore */
  readonly nearMm: number;
  /** rad. Folds beyond it are edges: above the noise of a scan, below a chamfer */
  readonly foldRad: number;
  /** mm, and share of the radius, that an edge may lie off the circle: scan noise, and a round drawn with few sides */
  readonly offMm: number;
  readonly offShare: number;
  /** share of the circle that needs an edge on it */
  readonly leastRoundShare: number;
  readonly seed: number;
  /** unit, of the surface at the place, out towards who looks: tells a place on the wall of a bore, which is left by its mouth */
  readonly normal?: Vec3;
}

export const RIM_SEARCH: RimSearch = {
  reachMm: 45,
  leastRadiusMm: 1.5,
  mostRadiusMm: 32,
  nearMm: 8,
  foldRad: 0.5,
  offMm: 0.12,
  offShare: 0.035,
  leastRoundShare: 0.75,
  seed: 1,
};

const TRIES = 1500;
const SECTORS = 24;
/** Points that edges are told by, at most: a dense scan has more edges than a circle needs. */
const MOST_POINTS = 1200;
/** Circles refined, at most. */
const MOST_KEPT = 16;

interface EdgePoint {
  readonly point: Vec3;
  readonly chain: number;
}

/**
 * The round rim of a mesh nearest to a place on or by it, mm. Sharp and open edges near the place are gathered, circles
 * are tried through three of their points at a time (RANSAC, Fischler and Bolles 1981; seeded, so the same answer every
 * time), those with edges most of the way round are fitted to their vertices by least squares, and the one whose line is
 * nearest to `place` is the answer. Undefined where there is none: take the surface's own normal then.
 * `toward`: the way the answer's axis has to look, such as to the eye that sees the place. Accuracy: exact for a rim drawn
 * with its vertices on a circle; a tenth of the noise or so for a scanned one.
 */
export function fitRim(mesh: TriMesh, place: Vec3, toward: Vec3, options: Partial<RimSearch> = {}): Rim | undefined {
  const search = { ...RIM_SEARCH, ...options };
  const edges = rimEdges(mesh, place, search.reachMm, search.foldRad);
  const points = pointsOf(edges, place, search.reachMm);
  if (points.length < 5) return undefined;
  const vertices = verticesOf(edges);
  const rims = circlesTried(points, place, search).flatMap((circle) => {
    const rim = refined(circle, points, vertices, search);
    return rim === undefined || !isNear(rim, place, search) ? [] : [rim];
  });
  const nearest = rims.reduce<Rim | undefined>(
    (best, rim) => (best === undefined || distanceToCircle(rim, place) < distanceToCircle(best, place) ? rim : best),
    undefined,
  );
  if (nearest === undefined) return undefined;
  const rim = mouthOf(nearest, rims, place, toward, search);
  return { ...rim, axis: dot(rim.axis, toward) < 0 ? scale(rim.axis, -1) : rim.axis };
}

/** A surface whose normal is this square to a rim's axis is a wall along it. */
const WALL_COSINE = 0.5;

/** From a place on the wall of a bore: of the rims of the same round, the one furthest towards the eye. Else the rim itself. */
function mouthOf(rim: Rim, rims: readonly Rim[], place: Vec3, toward: Vec3, search: RimSearch): Rim {
  const { normal } = search;
  if (normal === undefined || Math.abs(dot(normal, rim.axis)) > WALL_COSINE) return rim;
  // Out of a bore's wall the way is to its axis; out of a tube's it is away from it.
  if (dot(normal, sub(place, rim.centre)) > 0) return rim;
  const near = 2 * offOf(rim, search);
  const isOneBore = (other: Rim): boolean => {
    const along = dot(sub(other.centre, rim.centre), rim.axis);
    const aside = distance(other.centre, addScaled(rim.centre, rim.axis, along));
    const isParallel = Math.abs(dot(other.axis, rim.axis)) > SAME_TILT_COSINE;
    return isParallel && aside <= near && Math.abs(other.radiusMm - rim.radiusMm) <= near;
  };
  const outOf = ({ centre }: Rim): number => dot(centre, toward);
  return rims.filter(isOneBore).reduce((best, other) => (outOf(other) > outOf(best) ? other : best), rim);
}

function isNear(rim: Rim, place: Vec3, { nearMm }: RimSearch): boolean {
  return distanceToCircle(rim, place) <= Math.max(nearMm, 1.25 * rim.radiusMm);
}

/** Edges as points at even steps, so that a long straight edge counts for its length and not for its two ends. */
function pointsOf(edges: readonly RimEdge[], place: Vec3, reachMm: number): EdgePoint[] {
  const whole = edges.reduce((sum, { from, to }) => sum + distance(from, to), 0);
  const stepMm = Math.max(whole / MOST_POINTS, reachMm / 90);
  return edges.flatMap(({ from, to, chain }) => {
    const steps = Math.max(1, Math.round(distance(from, to) / stepMm));
    return Array.from({ length: steps }, (_, i) => ({ point: lerp(from, to, (i + 0.5) / steps), chain })).filter(
      ({ point }) => distance(point, place) <= reachMm,
    );
  });
}

/** Each edge's ends, counting for half of its length each. */
function verticesOf(edges: readonly RimEdge[]): WeighedPoint[] {
  return edges.flatMap(({ from, to }) => {
    const weight = distance(from, to) / 2;
    return [
      { point: from, weight },
      { point: to, weight },
    ];
  });
}

/** Circles with edges most of the way round, each once, those with most edges first. */
function circlesTried(points: readonly EdgePoint[], place: Vec3, search: RimSearch): readonly SpaceCircle[] {
  const random = seededRandom(search.seed);
  const nearFirst = [...points].sort((p, q) => distance(p.point, place) - distance(q.point, place));
  const chainOf = new Map<number, EdgePoint[]>();
  for (const point of nearFirst) chainOf.set(point.chain, [...(chainOf.get(point.chain) ?? []), point]);
  const kept: { circle: SpaceCircle; count: number }[] = [];
  for (let trial = 0; trial < TRIES; trial++) {
    const circle = tried(nearFirst, chainOf, random, search);
    // A circle met again is refined later anyway; counting what lies on it is what takes the time.
    if (circle === undefined || kept.some((other) => isSame(other.circle, circle, search))) continue;
    const on = pointsOn(points, circle, search);
    if (roundShare(circle, on) >= search.leastRoundShare) kept.push({ circle, count: on.length });
  }
  return kept
    .sort((p, q) => q.count - p.count)
    .slice(0, MOST_KEPT)
    .map(({ circle }) => circle);
}

/** A circle through three edge points, the first rather near than far, the others by turns from its own chain or from all. */
function tried(
  points: readonly EdgePoint[],
  chainOf: ReadonlyMap<number, readonly EdgePoint[]>,
  random: RandomSource,
  { leastRadiusMm, mostRadiusMm }: RimSearch,
): SpaceCircle | undefined {
  const first = points[Math.floor(random() * random() * points.length)] as EdgePoint;
  const others = random() < 0.7 ? (chainOf.get(first.chain) ?? points) : points;
  const pick = (): Vec3 => (others[Math.floor(random() * others.length)] as EdgePoint).point;
  const circle = circleThrough(first.point, pick(), pick());
  return circle !== undefined && circle.radiusMm >= leastRadiusMm && circle.radiusMm <= mostRadiusMm
    ? circle
    : undefined;
}

function offOf({ radiusMm }: SpaceCircle, { offMm, offShare }: RimSearch): number {
  return offMm + offShare * radiusMm;
}

function pointsOn<P extends { readonly point: Vec3 }>(
  points: readonly P[],
  circle: SpaceCircle,
  search: RimSearch,
): P[] {
  const off = offOf(circle, search);
  const far = circle.radiusMm + off;
  const [x, y, z] = circle.centre;
  const inBox = ([px, py, pz]: Vec3): boolean =>
    Math.abs(px - x) <= far && Math.abs(py - y) <= far && Math.abs(pz - z) <= far;
  return points.filter(({ point }) => inBox(point) && distanceToCircle(circle, point) <= off);
}

function roundShare({ centre, axis }: SpaceCircle, on: readonly { readonly point: Vec3 }[]): number {
  const u = anySquareTo(axis);
  const v = cross(axis, u);
  const sectors = new Set(
    on.map(({ point }) => {
      const off = sub(point, centre);
      return Math.floor((Math.atan2(dot(off, v), dot(off, u)) / (2 * Math.PI) + 0.5) * SECTORS) % SECTORS;
    }),
  );
  return sectors.size / SECTORS;
}

function isSame(a: SpaceCircle, b: SpaceCircle, search: RimSearch): boolean {
  const near = 2 * offOf(a, search);
  return (
    Math.abs(a.radiusMm - b.radiusMm) <= near &&
    distance(a.centre, b.centre) <= near &&
    Math.abs(dot(a.axis, b.axis)) > SAME_TILT_COSINE
  );
}

/** Two circles tilted by less than 15 degrees against each other may be one. */
const SAME_TILT_COSINE = Math.cos(Math.PI / 12);

/** The circle of least squares through the vertices on it, twice, since a better circle has other vertices on it. */
function refined(
  tried: SpaceCircle,
  points: readonly EdgePoint[],
  vertices: readonly WeighedPoint[],
  search: RimSearch,
): Rim | undefined {
  let circle: SpaceCircle | undefined = tried;
  for (let round = 0; round < 2 && circle !== undefined; round++)
    circle = fitCircle(pointsOn(vertices, circle, search), circle);
  if (circle === undefined || circle.radiusMm < search.leastRadiusMm || circle.radiusMm > search.mostRadiusMm)
    return undefined;
  const share = roundShare(circle, pointsOn(points, circle, search));
  if (share < search.leastRoundShare) return undefined;
  const on = pointsOn(vertices, circle, search);
  const weight = on.reduce((sum, vertex) => sum + vertex.weight, 0);
  const squares = on.reduce(
    (sum, vertex) => sum + vertex.weight * distanceToCircle(circle as SpaceCircle, vertex.point) ** 2,
    0,
  );
  return { ...circle, roundShare: share, roughnessMm: Math.sqrt(squares / weight) };
}
