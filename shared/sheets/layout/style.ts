/** What the papers look like. Lengths in mm, type sizes in points. Colours as red, green, blue from 0 to 1. */
export type Colour = readonly [number, number, number];

export const INK: Colour = [0.09, 0.1, 0.12];
export const GREY: Colour = [0.38, 0.4, 0.43];
export const RULE: Colour = [0.68, 0.7, 0.73];
export const WASH: Colour = [0.94, 0.945, 0.95];
export const WHITE: Colour = [1, 1, 1];
/** For what forbids; always beside a word and a shape, and dark enough to stay black on a one-colour printer. */
export const FORBID: Colour = [0.66, 0.08, 0.14];

/** Line weights of a workshop drawing: outlines thick, dimensions and hidden things thin. */
export const OUTLINE_MM = 0.5;
export const FINE_MM = 0.2;
export const HAIR_MM = 0.12;

export const TYPE = { tiny: 6.4, small: 7.4, body: 8.6, strong: 10.5, head: 18, huge: 33 } as const;
export const MM_PER_POINT = 25.4 / 72;
/** Line to line, as a multiple of the type size. */
export const LEADING = 1.3;

export const MARGIN_MM = 12;

/** Height of one line of type, mm. */
export function lineHeightMm(sizePt: number): number {
  return sizePt * MM_PER_POINT * LEADING;
}
