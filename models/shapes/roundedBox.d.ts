import { type Vec3 } from '../../shared/base/vec3.ts';
import { type Frame } from './frame.ts';
import type { Solid } from './solid.ts';
export interface BoxOptions {
  /** radius of the four upright corners, mm; default 6 */
  readonly corner?: number;
  /** rounding of the top and bottom edges, mm; default 3 */
  readonly edge?: number;
  /** pieces in each rounding; default 2 */
  readonly steps?: number;
}
/** A box about the frame's point, [side, up, axis] sizes in mm, with rounded corners and edges. */
export declare function boxOn(frame: Frame, size: Vec3, options?: BoxOptions): Solid;
/** A rounded box standing level: `from` and `to` are opposite corners. */
export declare function box(from: Vec3, to: Vec3, options?: BoxOptions): Solid;
