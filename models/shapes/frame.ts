import { add, addScaled, anySquareTo, cross, rejectFrom, scale, unit, type Vec3 } from '../../shared/base/vec3.ts';

/** A place to build on: `axis` points out of the part, `up` and `side` = axis x up lie across it. */
export interface Frame {
  readonly point: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
  readonly side: Vec3;
}

export function frameAt(point: Vec3, axis: Vec3, up?: Vec3): Frame {
  const along = unit(axis);
  const across = up === undefined ? anySquareTo(along) : unit(rejectFrom(up, along));
  return { point, axis: along, up: across, side: cross(along, across) };
}

/** Point of the bay at `along` the axis and (u, v) across it, on side and up. */
export function place(frame: Frame, along: number, u: number, v: number): Vec3 {
  return addScaled(addScaled(addScaled(frame.point, frame.axis, along), frame.side, u), frame.up, v);
}

/** The frame moved along its own directions. */
export function moved(frame: Frame, along: number, u = 0, v = 0): Frame {
  return { ...frame, point: place(frame, along, u, v) };
}

/** The frame turned about its axis, right-handed, degrees. */
export function turned(frame: Frame, deg: number): Frame {
  const a = (deg * Math.PI) / 180;
  const up = add(scale(frame.up, Math.cos(a)), scale(frame.side, -Math.sin(a)));
  return { ...frame, up, side: cross(frame.axis, up) };
}
