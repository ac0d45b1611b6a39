import type { Vec3 } from '../../shared/base/vec3.ts';
import { type Solid } from './solid.ts';
export declare function threadRadiusMm(dash: number): number;
/**
 * A union screwed into a part: a hexagon, a threaded nose with grooves, and a flat ring for a seat, whose middle is
 * `seatPoint` and whose normal is `axis`. The bore is blind. `stand` = from the part's surface to the seat, mm.
 */
export declare function union(seatPoint: Vec3, axis: Vec3, dash: number, stand: number): Solid;
