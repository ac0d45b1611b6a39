import {
  add,
  addScaled,
  anySquareTo,
  cross,
  dot,
  length,
  lengthOf,
  scale,
  sub,
  unit,
  type Vec3,
} from '../base/vec3.ts';

/** A circle in space. `axis`: unit, square to its plane, either way. */
export interface SpaceCircle {
  readonly centre: Vec3;
  readonly axis: Vec3;
  readonly radiusMm: number;
}

/** The circle through three points; undefined where they are in line, or as good as. */
export function circleThrough(a: Vec3, b: Vec3, c: Vec3): SpaceCircle | undefined {
  const u = sub(b, a);
  const v = sub(c, a);
  const n = cross(u, v);
  const area = dot(n, n);
  const spread = Math.max(dot(u, u), dot(v, v));
  if (!(area > LEAST_SLIMNESS * spread * spread)) return undefined;
  const toCentre = scale(sub(scale(cross(v, n), dot(u, u)), scale(cross(u, n), dot(v, v))), 1 / (2 * area));
  return { centre: add(a, toCentre), axis: unit(n), radiusMm: length(toCentre) };
}

/** Squared sine of the slimmest angle that three points may make: 1 degree; beyond it the radius is noise. */
const LEAST_SLIMNESS = 3e-4;

/** Distance of a point from the circle's line, mm. */
export function distanceToCircle({ centre, axis, radiusMm }: SpaceCircle, point: Vec3): number {
  const off = sub(point, centre);
  const height = dot(off, axis);
  return lengthOf(length(addScaled(off, axis, -height)) - radiusMm, height);
}

/** A point with how much it counts for. */
export interface WeighedPoint {
  readonly point: Vec3;
  readonly weight: number;
}

const ROUNDS = 8;

/**
 * The circle nearest to some points by least squares: first their plane (heights over the plane of `start`, linear), then
 * the circle in it (Gauss-Newton on distances from its line, Gander, Golub and Strebel 1994), again and again from the
 * better plane. `start` has to be near: a few tens of degrees and a fraction of the radius. Undefined where the points do
 * not settle a circle. Exact for points of a circle.
 */
export function fitCircle(points: readonly WeighedPoint[], start: SpaceCircle): SpaceCircle | undefined {
  let circle: SpaceCircle | undefined = start;
  for (let round = 0; round < ROUNDS && circle !== undefined; round++) circle = nearer(points, circle);
  return circle;
}

function nearer(points: readonly WeighedPoint[], { centre, axis, radiusMm }: SpaceCircle): SpaceCircle | undefined {
  const u = anySquareTo(axis);
  const v = cross(axis, u);
  const local = points.map(({ point, weight }) => {
    const off = sub(point, centre);
    return { x: dot(off, u), y: dot(off, v), z: dot(off, axis), weight };
  });
  const plane = leastSquares(local.map(({ x, y, z, weight }) => ({ row: [x, y, 1], value: z, weight })));
  const step = leastSquares(
    local.map(({ x, y, weight }) => {
      const reach = lengthOf(x, y) || 1;
      return { row: [x / reach, y / reach, 1], value: reach - radiusMm, weight };
    }),
  );
  if (plane === undefined || step === undefined) return undefined;
  const [slopeX, slopeY, height] = plane;
  const [dx, dy, grow] = step;
  const moved = addScaled(addScaled(centre, u, dx), v, dy);
  const tilted = unit(addScaled(addScaled(axis, u, -slopeX), v, -slopeY));
  const radius = radiusMm + grow;
  if (!(radius > 0) || !Number.isFinite(radius)) return undefined;
  return { centre: addScaled(moved, axis, height + slopeX * dx + slopeY * dy), axis: tilted, radiusMm: radius };
}

interface Equation {
  readonly row: Vec3;
  readonly value: number;
  readonly weight: number;
}

/** Three unknowns from weighed equations by their normal equations and Cramer's rule; undefined where they are not settled. */
function leastSquares(equations: readonly Equation[]): readonly [number, number, number] | undefined {
  const m = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  const right: [number, number, number] = [0, 0, 0];
  for (const { row, value, weight } of equations)
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) m[i * 3 + j]! += weight * row[i]! * row[j]!;
      right[i]! += weight * row[i]! * value;
    }
  const [a, b, c]: [Vec3, Vec3, Vec3] = [
    [m[0]!, m[3]!, m[6]!],
    [m[1]!, m[4]!, m[7]!],
    [m[2]!, m[5]!, m[8]!],
  ];
  const whole = dot(a, cross(b, c));
  if (!(Math.abs(whole) > LEAST_SLIMNESS * LEAST_SLIMNESS * length(a) * length(b) * length(c))) return undefined;
  return [dot(right, cross(b, c)) / whole, dot(a, cross(right, c)) / whole, dot(a, cross(b, right)) / whole];
}
