import { type Frame } from './frame.ts';
import { type Outline } from './outline.ts';
import { type Solid } from './solid.ts';
/** An outline raised along the frame's axis, with both edges bevelled. No holes. */
export declare function extrude(frame: Frame, outline: Outline, depth: number, bevel?: number): Solid;
/** A plate with holes right through it, on the frame from 0 to `depth` along the axis. */
export declare function plate(frame: Frame, outline: Outline, holes: readonly Outline[], depth: number): Solid;
