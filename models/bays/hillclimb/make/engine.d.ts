import { type Part } from '../../../shapes/part.ts';
/** Middles of the four bores along the crankshaft, mm. */
export declare const BORES_X: readonly number[];
export declare function block(): Part;
export declare function head(): Part;
export declare function camCover(): Part;
export declare function sump(): Part;
export declare function timingCover(): Part;
export declare function waterPump(): Part;
export declare function oilFilter(): Part;
export declare function starter(): Part;
export declare function engineParts(): Part[];
