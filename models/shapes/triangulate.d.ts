import type { Outline } from './outline.ts';
/** Triangles of a simple counter-clockwise outline by ear clipping, as numbers of its points. */
export declare function triangulate(outline: Outline): [number, number, number][];
/** The same for an outline whichever way round it runs; the triangles run the way the outline does. */
export declare function triangulateEitherWay(outline: Outline): [number, number, number][];
/**
 * One outline that runs into every hole and back along a slit. Answers the numbers of the points in `[outline, ...holes]`
 * laid end to end; holes are given counter-clockwise and walked backwards.
 */
export declare function withHoles(
  outline: Outline,
  holes: readonly Outline[],
): {
  points: Outline;
  numbers: number[];
};
