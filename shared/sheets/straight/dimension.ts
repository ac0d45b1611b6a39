import type { Page } from '../layout/page.ts';
import { FINE_MM, HAIR_MM, INK, TYPE, WHITE } from '../layout/style.ts';

const HEAD_MM = 2.2;

/** A level dimension line with filled heads between two places, its text on a gap in the line. */
export function drawDimension(page: Page, x1: number, x2: number, y: number, text: string, bold = false): void {
  page.line(x1, y, x2, y, { widthMm: FINE_MM });
  head(page, x1, y, 1);
  head(page, x2, y, -1);
  const sizePt = TYPE.small;
  const width = page.face(bold).widthMm(text, sizePt);
  const middle = (x1 + x2) / 2;
  page.rectangle(middle - width / 2 - 1, y - 1.6, width + 2, 3.2, { line: null, fill: WHITE });
  page.text(text, middle, y + 0.95, { sizePt, bold, align: 'middle' });
}

/** A thin line from a place on the drawing to the dimension that ends on it. */
export function drawExtension(page: Page, x: number, y1: number, y2: number): void {
  page.line(x, y1, x, y2, { widthMm: HAIR_MM });
}

function head(page: Page, x: number, y: number, way: 1 | -1): void {
  page.path(
    [
      [x, y],
      [x + way * HEAD_MM, y - 0.45],
      [x + way * HEAD_MM, y + 0.45],
    ],
    { line: null, fill: INK },
    true,
  );
}

/** A numbered ring, for places that a table below explains. */
export function drawBalloon(page: Page, x: number, y: number, number: number): void {
  page.circle(x, y, 2.1, { widthMm: FINE_MM * 1.3, fill: WHITE });
  page.text(`${number}`, x, y + 0.9, { sizePt: number < 10 ? TYPE.small : TYPE.tiny, bold: true, align: 'middle' });
}
