import { type Frame } from './frame.ts';
import { type Solid } from './solid.ts';
/** A hexagon prism with a chamfered top, on the frame. */
export declare function hexHead(frame: Frame, acrossFlats: number, height: number): Solid;
/** A washer and a hex head; the frame's axis points out of the work. `size` = thread diameter, mm. */
export declare function bolt(frame: Frame, size?: number): Solid;
/** A cap screw: a round head with a hexagon socket in it. */
export declare function capScrew(frame: Frame, size?: number): Solid;
/** Bolts on a circle round the frame's axis, `count` of them, the first at `fromDeg` from up. */
export declare function boltCircle(frame: Frame, radius: number, count: number, size: number, fromDeg?: number): Solid;
