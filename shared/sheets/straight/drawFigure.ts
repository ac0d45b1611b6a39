import type { FigureLook, FigureShape } from '../../document/lay/lengthFigure.ts';
import type { Ink, Page, Point } from '../layout/page.ts';
import { FINE_MM, GREY, HAIR_MM, INK, WASH, WHITE } from '../layout/style.ts';

const INKS: Record<FigureLook, Ink> = {
  hose: { widthMm: FINE_MM, fill: WHITE },
  metal: { widthMm: FINE_MM, fill: WASH },
  nut: { widthMm: FINE_MM * 1.4, fill: WHITE },
  axis: { widthMm: HAIR_MM, line: GREY, dashMm: [1.2, 0.4, 0.3, 0.4] },
  extension: { widthMm: HAIR_MM },
  dimension: { widthMm: FINE_MM },
  head: { line: null, fill: INK },
};

/** Draws a figure with its left top corner at (x, y), perUnit mm of paper to one of its units. */
export function drawFigure(page: Page, shapes: readonly FigureShape[], x: number, y: number, perUnit: number): void {
  const at = ([u, v]: Point): Point => [x + u * perUnit, y + v * perUnit];
  for (const shape of shapes) {
    if (shape.kind === 'circle') page.circle(...at(shape.centre), shape.radius * perUnit, INKS[shape.look]);
    else page.path(shape.points.map(at), INKS[shape.look], shape.closed);
  }
}
