import {
  addScaled,
  angleBetween,
  anySquareTo,
  cross,
  distance,
  dot,
  lerp,
  rejectFrom,
  sub,
  turnAbout,
  unit,
  type Vec3,
} from '../../shared/base/vec3.ts';
import { type Frame, place } from './frame.ts';
import { circle } from './lathe.ts';
import { skin } from './skin.ts';
import type { Solid } from './solid.ts';

/** Frames along a polyline, carried without twist; `up` at the start, else any. */
export function framesAlong(path: readonly Vec3[], up?: Vec3): Frame[] {
  const frames: Frame[] = [];
  path.forEach((point, i) => {
    const before = path[Math.max(0, i - 1)] as Vec3;
    const after = path[Math.min(path.length - 1, i + 1)] as Vec3;
    const axis = unit(sub(after, before));
    const last = frames.at(-1);
    const across = last?.up ?? up ?? anySquareTo(axis);
    const square = unit(rejectFrom(across, axis));
    frames.push({ point, axis, up: square, side: cross(axis, square) });
  });
  return frames;
}

export type RadiusAlong = number | ((t: number) => number);

/** A solid round bar along a path; the radius may change with t from 0 to 1 along the points. */
export function bar(path: readonly Vec3[], radius: RadiusAlong, segments = 24): Solid {
  return skin(rings(framesAlong(path), radius, segments));
}

/** How many rings deep the bore of an open pipe is made: what an eye at its end can see. */
const BORE_RINGS = 6;

/** A pipe along a path with a wall of `wall` mm, bored at both ends as deep as can be seen, closed inside. */
export function pipe(path: readonly Vec3[], radius: RadiusAlong, wall: number, segments = 28): Solid {
  const frames = framesAlong(path);
  const inner = rings(frames, typeof radius === 'number' ? radius - wall : (t) => radius(t) - wall, segments);
  const depth = Math.min(BORE_RINGS, Math.floor(frames.length / 2) - 1);
  const near = inner.slice(0, depth).reverse();
  const far = inner.slice(-depth).reverse();
  return skin([...near, ...rings(frames, radius, segments), ...far]);
}

/** Any outline (u on side, v on up) along a path, the same everywhere or changing with t. */
export function sweepOutline(
  path: readonly Vec3[],
  outline: (t: number) => readonly (readonly [number, number])[],
  up?: Vec3,
): Solid {
  const frames = framesAlong(path, up);
  return skin(frames.map((f, i) => outline(i / (frames.length - 1)).map(([u, v]) => place(f, 0, u, v))));
}

function rings(frames: readonly Frame[], radius: RadiusAlong, segments: number): Vec3[][] {
  return frames.map((f, i) =>
    circle(f, 0, typeof radius === 'number' ? radius : radius(i / (frames.length - 1)), segments),
  );
}

/** Corners joined by straight tube and bends of one radius, as a tube bender makes them; arcs sampled every `stepDeg`. */
export function bentPath(corners: readonly Vec3[], bendRadius: number, stepDeg = 6): Vec3[] {
  const path: Vec3[] = [corners[0] as Vec3];
  for (let i = 1; i < corners.length - 1; i++) {
    path.push(...bend(corners[i - 1] as Vec3, corners[i] as Vec3, corners[i + 1] as Vec3, bendRadius, stepDeg));
  }
  path.push(corners.at(-1) as Vec3);
  return path;
}

function bend(before: Vec3, corner: Vec3, after: Vec3, radius: number, stepDeg: number): Vec3[] {
  const inward = unit(sub(corner, before));
  const onward = unit(sub(after, corner));
  const angle = angleBetween(inward, onward);
  const normal = cross(inward, onward);
  if (dot(normal, normal) === 0) return [corner];
  const tangent = radius * Math.tan(angle / 2);
  const start = addScaled(corner, inward, -tangent);
  const axis = unit(normal);
  const toStart = cross(inward, axis);
  const centre = addScaled(start, toStart, -radius);
  const steps = Math.max(2, Math.ceil((angle * 180) / Math.PI / stepDeg));
  return Array.from({ length: steps + 1 }, (_, k) =>
    addScaled(centre, turnAbout(toStart, axis, (angle * k) / steps), radius),
  );
}

/** A smooth curve through points (Catmull-Rom, centripetal spacing left out: points are placed evenly by hand). */
export function curveThrough(points: readonly Vec3[], stepsPerSpan = 10): Vec3[] {
  const path: Vec3[] = [];
  for (let i = 0; i < points.length - 1; i++) {
    const [p1, p2] = [points[i] as Vec3, points[i + 1] as Vec3];
    const p0 = points[i - 1] ?? addScaled(p1, sub(p2, p1), -1);
    const p3 = points[i + 2] ?? addScaled(p2, sub(p2, p1), 1);
    for (let k = 0; k < stepsPerSpan; k++) path.push(catmullRom(p0, p1, p2, p3, k / stepsPerSpan));
  }
  path.push(points.at(-1) as Vec3);
  return path;
}

function catmullRom(p0: Vec3, p1: Vec3, p2: Vec3, p3: Vec3, t: number): Vec3 {
  const at = (i: 0 | 1 | 2): number =>
    0.5 *
    (2 * p1[i] +
      (p2[i] - p0[i]) * t +
      (2 * p0[i] - 5 * p1[i] + 4 * p2[i] - p3[i]) * t * t +
      (3 * p1[i] - p0[i] - 3 * p2[i] + p3[i]) * t * t * t);
  return [at(0), at(1), at(2)];
}

/** A straight line cut into pieces no longer than `step`, so that a tube has rings to be lit by. */
export function straight(a: Vec3, b: Vec3, step = 40): Vec3[] {
  const pieces = Math.max(1, Math.round(distance(a, b) / step));
  return Array.from({ length: pieces + 1 }, (_, k) => lerp(a, b, k / pieces));
}
