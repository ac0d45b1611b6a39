import type { Page } from './page.ts';
import { INK, MARGIN_MM, TYPE, WHITE } from './style.ts';

/** The dark band of a paper whose figures are invented, 5 mm tall, its top at y: what may not be done with it. */
export function drawExampleMark(page: Page, y: number, widthMm: number, mayNot: string): void {
  page.rectangle(MARGIN_MM, y, widthMm, 5, { line: null, fill: INK });
  page.text(`EXAMPLE DATA: invented for learning. ${mayNot}`, MARGIN_MM + 2.4, y + 3.5, {
    sizePt: TYPE.small,
    bold: true,
    colour: WHITE,
  });
}
