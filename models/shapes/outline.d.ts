/** Flat outlines, counter-clockwise, mm. */
export type Outline = readonly (readonly [number, number])[];
/** A rectangle with rounded corners about (0, 0). */
export declare function roundedRectangle(width: number, height: number, corner: number, steps?: number): Outline;
export declare function circleOutline(radius: number, count?: number, at?: readonly [number, number]): Outline;
/** A hexagon by its distance across flats, `perSide` points on each side. */
export declare function hexagon(acrossFlats: number, perSide?: number): Outline;
/** Every point moved inward by `by` along the mean normal of its two sides; fine for small bevels. */
export declare function inset(outline: Outline, by: number): Outline;
