/** The scales a workshop drawing uses, 1 to this (ISO 5455 and the steps between that a ruler still reads). */
export const DRAWING_SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 10, 15, 20, 25, 30, 40, 50] as const;

/** The largest usual scale, as a divisor, at which a thing this big fits the room on paper. All in mm above zero. */
export function drawingScale(sizeMm: number, roomMm: number): number {
  const last = DRAWING_SCALES[DRAWING_SCALES.length - 1]!;
  return DRAWING_SCALES.find((divisor) => sizeMm / divisor <= roomMm) ?? Math.max(last, Math.ceil(sizeMm / roomMm));
}
