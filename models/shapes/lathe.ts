import type { Vec3 } from '../../shared/base/vec3.ts';
import { type Frame, place } from './frame.ts';
import { skin } from './skin.ts';
import type { Solid } from './solid.ts';

/** Height along the axis and radius, mm. */
export type Turned = readonly [heightMm: number, radiusMm: number];

/** A profile turned about the frame's axis. `loop`: the profile is a closed outline (a ring, a hollow part). */
export function lathe(frame: Frame, profile: readonly Turned[], segments = 32, loop = false): Solid {
  return skin(
    profile.map(([h, r]) => circle(frame, h, r, segments)),
    { loop },
  );
}

export function circle(frame: Frame, along: number, radius: number, segments: number): Vec3[] {
  if (radius === 0) return [place(frame, along, 0, 0)];
  return Array.from({ length: segments }, (_, k) => {
    const a = (2 * Math.PI * k) / segments;
    return place(frame, along, radius * Math.cos(a), radius * Math.sin(a));
  });
}

/** A plain cylinder with a small edge chamfer at both ends. */
export function cylinder(frame: Frame, length: number, radius: number, segments = 32, edge = 0.8): Solid {
  return lathe(
    frame,
    [
      [0, radius - edge],
      [edge, radius],
      [length - edge, radius],
      [length, radius - edge],
    ],
    segments,
  );
}

/** A quarter-round from (h0, r0) to (h1, r1), bulging outward, as profile points without its first. */
export function quarterRound(h0: number, r0: number, h1: number, r1: number, steps = 4): Turned[] {
  const points: Turned[] = [];
  for (let i = 1; i <= steps; i++) {
    const a = (Math.PI / 2) * (i / steps);
    // From a wall to a face: radius falls slowly first, height climbs fast first.
    points.push([h0 + (h1 - h0) * Math.sin(a), r1 + (r0 - r1) * Math.cos(a)]);
  }
  return points;
}
