import { type Vec3 } from '../../shared/base/vec3.ts';
/** A place to build on: `axis` points out of the part, `up` and `side` = axis x up lie across it. */
export interface Frame {
  readonly point: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
  readonly side: Vec3;
}
export declare function frameAt(point: Vec3, axis: Vec3, up?: Vec3): Frame;
/** Point of the bay at `along` the axis and (u, v) across it, on side and up. */
export declare function place(frame: Frame, along: number, u: number, v: number): Vec3;
/** The frame moved along its own directions. */
export declare function moved(frame: Frame, along: number, u?: number, v?: number): Frame;
/** The frame turned about its axis, right-handed, degrees. */
export declare function turned(frame: Frame, deg: number): Frame;
