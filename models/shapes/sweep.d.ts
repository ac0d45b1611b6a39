import { type Vec3 } from '../../shared/base/vec3.ts';
import { type Frame } from './frame.ts';
import type { Solid } from './solid.ts';
/** Frames along a polyline, carried without twist; `up` at the start, else any. */
export declare function framesAlong(path: readonly Vec3[], up?: Vec3): Frame[];
export type RadiusAlong = number | ((t: number) => number);
/** A solid round bar along a path; the radius may change with t from 0 to 1 along the points. */
export declare function bar(path: readonly Vec3[], radius: RadiusAlong, segments?: number): Solid;
/** A pipe along a path with a wall of `wall` mm, bored at both ends as deep as can be seen, closed inside. */
export declare function pipe(path: readonly Vec3[], radius: RadiusAlong, wall: number, segments?: number): Solid;
/** Any outline (u on side, v on up) along a path, the same everywhere or changing with t. */
export declare function sweepOutline(
  path: readonly Vec3[],
  outline: (t: number) => readonly (readonly [number, number])[],
  up?: Vec3,
): Solid;
/** Corners joined by straight tube and bends of one radius, as a tube bender makes them; arcs sampled every `stepDeg`. */
export declare function bentPath(corners: readonly Vec3[], bendRadius: number, stepDeg?: number): Vec3[];
/** A smooth curve through points (Catmull-Rom, centripetal spacing left out: points are placed evenly by hand). */
export declare function curveThrough(points: readonly Vec3[], stepsPerSpan?: number): Vec3[];
/** A straight line cut into pieces no longer than `step`, so that a tube has rings to be lit by. */
export declare function straight(a: Vec3, b: Vec3, step?: number): Vec3[];
