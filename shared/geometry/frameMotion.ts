import { cross, sub, type Vec3 } from '../base/vec3.ts';
import { type RigidMotion, turnDirection } from './rigidMotion.ts';

/** A place with two directions, unit and square to each other. */
export interface Frame {
  readonly seatPoint: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
}

/** The rigid movement that brings one frame onto another. mm. Exact. */
export function frameMotion(from: Frame, to: Frame): RigidMotion {
  const third = { from: cross(from.axis, from.up), to: cross(to.axis, to.up) };
  // Where a unit vector of the bay goes: its parts along the three directions of `from`, laid off along those of `to`.
  const column = (k: 0 | 1 | 2): Vec3 => {
    const [x, y, z] = [from.axis[k], from.up[k], third.from[k]];
    return [
      x * to.axis[0] + y * to.up[0] + z * third.to[0],
      x * to.axis[1] + y * to.up[1] + z * third.to[1],
      x * to.axis[2] + y * to.up[2] + z * third.to[2],
    ];
  };
  const turn: RigidMotion = { axes: [column(0), column(1), column(2)], shift: [0, 0, 0] };
  return { ...turn, shift: sub(to.seatPoint, turnDirection(turn, from.seatPoint)) };
}
