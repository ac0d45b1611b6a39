import type { Vec3 } from '../../shared/base/vec3.ts';
import { type Frame } from './frame.ts';
import type { Solid } from './solid.ts';
/** Height along the axis and radius, mm. */
export type Turned = readonly [heightMm: number, radiusMm: number];
/** A profile turned about the frame's axis. `loop`: the profile is a closed outline (a ring, a hollow part). */
export declare function lathe(frame: Frame, profile: readonly Turned[], segments?: number, loop?: boolean): Solid;
export declare function circle(frame: Frame, along: number, radius: number, segments: number): Vec3[];
/** A plain cylinder with a small edge chamfer at both ends. */
export declare function cylinder(frame: Frame, length: number, radius: number, segments?: number, edge?: number): Solid;
/** A quarter-round from (h0, r0) to (h1, r1), bulging outward, as profile points without its first. */
export declare function quarterRound(h0: number, r0: number, h1: number, r1: number, steps?: number): Turned[];
