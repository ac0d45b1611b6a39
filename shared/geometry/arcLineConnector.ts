import { ROUNDING_MM, ROUNDING_RAD } from '../base/tolerances.ts';
import {
  addScaled,
  angleBetween,
  anySquareTo,
  cross,
  dot,
  length,
  lengthOf,
  rejectFrom,
  scale,
  sub,
  unit,
  type Vec3,
} from '../base/vec3.ts';
import type { ArcLinePath, PathSegment, Pose } from './arcLinePath.ts';

/** An arc, a straight and an arc (any of them may have no length) from one pose to another. */
export interface Connection {
  readonly lengthMm: number;
  /** turn of the first and of the last arc, 0 to 2 pi */
  readonly firstTurnRad: number;
  readonly lastTurnRad: number;
  readonly straightMm: number;
  /** unit direction of the straight */
  readonly straightDirection: Vec3;
  readonly radiusMm: number;
}

const MOST_STEPS = 60;
/**
 * An iteration is given up whose steps do not shrink to this share from the first of these steps to the second: most that are begun in a
 * search go round for ever, and one that comes to rest in `MOST_STEPS` shrinks to a tenth or so (measured; none of 180 thousand at random
 * distances of up to 8 R is lost).
 */
const EARLY_STEP = 5;
const JUDGED_STEP = 10;
const MOST_LEFT = 0.3;
const MOST_NEWTON_STEPS = 25;
/** rad; a Newton step is held to this on the sphere, so that starts stay near the root they are meant for */
const LONGEST_NEWTON_STEP = 0.5;
/** A turn of just pi has its tangents' meeting point at infinity: directions this near to it are left to other roots. */
const NEAREST_TO_HALF_TURN = 1e-9;
/** tan of the angle off a half turn at which starts for nearly half turns are set */
const NEAR_HALF_TURN = 0.08;
const SIGNS = [1, -1] as const;
/** The 14 directions of a cube's faces and corners. */
const ALL_ROUND: readonly Vec3[] = [-1, 0, 1]
  .flatMap((x) => [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((z): Vec3 => [x, y, z])))
  .filter((v) => Math.abs(v[0]) + Math.abs(v[1]) + Math.abs(v[2]) === 1 || v.every((c) => c !== 0))
  .map(unit);

/**
 * The arc-straight-arc connection of two poses with arcs of `radiusMm` turning less than pi each, if there is one.
 * Method: with tangent lengths a = R tan(alpha/2), b = R tan(beta/2) the straight runs along D - a t0 - b t1 (D from
 * point to point, t the end directions); iterated to a fixed point. The curve is a polyline of three edges with its
 * corners rounded. Residual below 1e-9 mm, about 1 us. Not the shortest curve for poses under about 2.5 R apart.
 */
export function connectWithShortTurns(from: Pose, to: Pose, radiusMm: number): Connection | undefined {
  const [x0, y0, z0] = from.direction;
  const [x1, y1, z1] = to.direction;
  const dx = to.point[0] - from.point[0];
  const dy = to.point[1] - from.point[1];
  const dz = to.point[2] - from.point[2];
  let size = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (size < ROUNDING_MM) return undefined;
  let sx = dx / size;
  let sy = dy / size;
  let sz = dz / size;
  let early = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const c0 = x0 * sx + y0 * sy + z0 * sz;
    const c1 = x1 * sx + y1 * sy + z1 * sz;
    if (c0 < NEAREST_TO_HALF_TURN - 1 || c1 < NEAREST_TO_HALF_TURN - 1) return undefined;
    const a = tangentLength(radiusMm, c0);
    const b = tangentLength(radiusMm, c1);
    const ex = dx - a * x0 - b * x1;
    const ey = dy - a * y0 - b * y1;
    const ez = dz - a * z0 - b * z1;
    size = Math.sqrt(ex * ex + ey * ey + ez * ez);
    if (size < ROUNDING_MM) return undefined;
    const change = Math.abs(ex / size - sx) + Math.abs(ey / size - sy) + Math.abs(ez / size - sz);
    sx = ex / size;
    sy = ey / size;
    sz = ez / size;
    if (step === EARLY_STEP) early = change;
    if (step === JUDGED_STEP && change > MOST_LEFT * early) return undefined;
    if (change * (size + a + b) < ROUNDING_MM) {
      return connectionAt(from, to, radiusMm, 1, 1, size - a - b, [sx, sy, sz]);
    }
  }
  return undefined;
}

/**
 * The shortest arc-straight-arc connection of two poses, turns over pi included (in the plane: the best of Dubins' LSL, RSR, LSR
 * and RSL). Method: Newton's iteration on the straight's direction from a set of starts all round the sphere, for each
 * choice of short and long turns. Up to seven roots exist (Baez, Navkar, Becker 2024, arXiv 2405.08710); a root that no start
 * falls into is missed: seen only for turns within 0.01 rad of pi. About 250 us.
 */
export function connectPoses(from: Pose, to: Pose, radiusMm: number): Connection | undefined {
  let best = connectWithShortTurns(from, to, radiusMm);
  for (const guess of straightGuesses(from, to, radiusMm)) {
    for (const first of SIGNS) {
      for (const last of SIGNS) {
        const found = newtonConnection(from, to, radiusMm, first, last, guess);
        if (found && (!best || found.lengthMm < best.lengthMm - ROUNDING_MM)) best = found;
      }
    }
  }
  return best;
}

/** The connection as a path from `from` to `to`. */
export function connectionPath(from: Pose, to: Pose, connection: Connection): ArcLinePath {
  const { radiusMm, straightMm, straightDirection } = connection;
  const segments: PathSegment[] = [];
  const first = turnTowards(from.direction, straightDirection, connection.firstTurnRad);
  if (first) segments.push({ kind: 'arc', radiusMm, angleRad: connection.firstTurnRad, normal: first });
  if (straightMm > ROUNDING_MM) segments.push({ kind: 'line', lengthMm: straightMm });
  const last = turnTowards(straightDirection, to.direction, connection.lastTurnRad);
  if (last) segments.push({ kind: 'arc', radiusMm, angleRad: connection.lastTurnRad, normal: last });
  return { start: from, segments };
}

/**
 * Newton's iteration for the straight's direction d on the sphere: the part of E(d) = D - a t0 - b t1 square to d is to
 * vanish. `first`, `last`: 1 for a turn under pi, -1 for one over pi (whose tangents meet behind it).
 */
function newtonConnection(
  from: Pose,
  to: Pose,
  radiusMm: number,
  first: 1 | -1,
  last: 1 | -1,
  guess: Vec3,
): Connection | undefined {
  const between = sub(to.point, from.point);
  const t0 = from.direction;
  const t1 = to.direction;
  let d = guess;
  for (let step = 0; step < MOST_NEWTON_STEPS; step++) {
    const c0 = dot(t0, d);
    const c1 = dot(t1, d);
    if (Math.min(c0, c1) < NEAREST_TO_HALF_TURN - 1) return undefined;
    const a = first * tangentLength(radiusMm, c0);
    const b = last * tangentLength(radiusMm, c1);
    const edge = addScaled(addScaled(between, t0, -a), t1, -b);
    const u = anySquareTo(d);
    const v = cross(d, u);
    const along = dot(edge, d);
    const fu = dot(edge, u);
    const fv = dot(edge, v);
    if (Math.abs(fu) + Math.abs(fv) < ROUNDING_MM)
      return connectionAt(from, to, radiusMm, first, last, along - a - b, d);
    const ka = first * tangentSlope(radiusMm, c0);
    const kb = last * tangentSlope(radiusMm, c1);
    const [u0, v0, u1, v1] = [dot(t0, u), dot(t0, v), dot(t1, u), dot(t1, v)];
    const juu = ka * u0 * u0 + kb * u1 * u1 - along;
    const jvv = ka * v0 * v0 + kb * v1 * v1 - along;
    const juv = ka * u0 * v0 + kb * u1 * v1;
    const determinant = juu * jvv - juv * juv;
    if (Math.abs(determinant) < ROUNDING_MM) return undefined;
    const su = (-fu * jvv + fv * juv) / determinant;
    const sv = (-fv * juu + fu * juv) / determinant;
    const shrink = Math.min(1, LONGEST_NEWTON_STEP / lengthOf(su, sv));
    d = unit(addScaled(addScaled(d, u, su * shrink), v, sv * shrink));
  }
  return undefined;
}

/** R tan(angle/2) for a turn with the given cosine. */
function tangentLength(radiusMm: number, cosine: number): number {
  return cosine >= 1 ? 0 : radiusMm * Math.sqrt((1 - cosine) / (1 + cosine));
}

/** Minus the derivative of `tangentLength` by the cosine; bounded near 1, where the turn is no turn. */
function tangentSlope(radiusMm: number, cosine: number): number {
  return radiusMm / ((1 + cosine) * Math.sqrt(Math.max(ROUNDING_RAD, 1 - cosine * cosine)));
}

function connectionAt(
  from: Pose,
  to: Pose,
  radiusMm: number,
  first: number,
  last: number,
  straightMm: number,
  straightDirection: Vec3,
): Connection | undefined {
  if (straightMm < -ROUNDING_MM) return undefined;
  const short0 = angleBetween(from.direction, straightDirection);
  const short1 = angleBetween(straightDirection, to.direction);
  const firstTurnRad = first > 0 ? short0 : 2 * Math.PI - short0;
  const lastTurnRad = last > 0 ? short1 : 2 * Math.PI - short1;
  const straight = Math.max(0, straightMm);
  const lengthMm = radiusMm * (firstTurnRad + lastTurnRad) + straight;
  return { lengthMm, firstTurnRad, lastTurnRad, straightMm: straight, straightDirection, radiusMm };
}

/** Where the straight may point to begin with: along the lines between the turning circles' centres, and all round. */
function straightGuesses(from: Pose, to: Pose, radiusMm: number): Vec3[] {
  const between = sub(to.point, from.point);
  const side0 = sideTowards(between, from.direction);
  const side1 = sideTowards(between, to.direction);
  const guesses: Vec3[] = [];
  for (const a of SIGNS) {
    for (const b of SIGNS) guesses.push(addScaled(addScaled(between, side0, -a * radiusMm), side1, b * radiusMm));
  }
  // Turns of nearly pi: their tangents meet far off, and no start at a distance falls into them.
  for (const sign of SIGNS) {
    guesses.push(addScaled(scale(side0, sign * NEAR_HALF_TURN), from.direction, -1));
    guesses.push(addScaled(scale(side1, sign * NEAR_HALF_TURN), to.direction, -1));
  }
  return [...guesses.filter((g) => length(g) > ROUNDING_MM).map(unit), ...ALL_ROUND];
}

/** Unit vector square to `direction`, as near to `aim` as that allows. */
function sideTowards(aim: Vec3, direction: Vec3): Vec3 {
  const side = rejectFrom(aim, direction);
  return length(side) > ROUNDING_MM ? unit(side) : anySquareTo(direction);
}

/** Unit vector square to `from` on the side the arc turns to; for a turn over pi that is away from `to`. */
function turnTowards(from: Vec3, to: Vec3, turnRad: number): Vec3 | undefined {
  if (turnRad <= ROUNDING_RAD) return undefined;
  const side = rejectFrom(to, from);
  const size = length(side);
  if (size <= ROUNDING_RAD) return undefined;
  return unit(rejectFrom(scale(side, (turnRad > Math.PI ? -1 : 1) / size), from));
}
