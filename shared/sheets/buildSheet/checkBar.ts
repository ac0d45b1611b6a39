import { MM_PER_INCH } from '../../base/units.ts';
import type { Block } from '../layout/block.ts';
import type { Page } from '../layout/page.ts';
import { FINE_MM, HAIR_MM, TYPE } from '../layout/style.ts';

/** Length of the bar in mm, and of its inch side in inches. */
export const CHECK_BAR_MM = 100;
export const CHECK_BAR_IN = 4;

/** The bar that proves a page was printed at true scale, millimetres above and inches below, with a square to tick. */
export function checkBar(widthMm: number): Block {
  return {
    heightMm: 13.5,
    draw: (page, x, y) => {
      millimetres(page, x, y + 5.4);
      inches(page, x, y + 5.4);
      const left = x + CHECK_BAR_MM + 12;
      page.rectangle(left, y + 1.6, 4, 4, { widthMm: 0.4 });
      page.text(`measured: ${CHECK_BAR_MM} mm / ${CHECK_BAR_IN} in`, left + 6, y + 4.9, {
        sizePt: TYPE.body,
        bold: true,
      });
      page.paragraph(
        'Print at 100 %, never fitted to the page. Unticked or off: trust neither scale nor strip.',
        left,
        y + 6.6,
        widthMm - CHECK_BAR_MM - 12,
        { sizePt: TYPE.tiny },
      );
    },
  };
}

function millimetres(page: Page, x: number, y: number): void {
  page.line(x, y, x + CHECK_BAR_MM, y, { widthMm: FINE_MM });
  for (let mm = 0; mm <= CHECK_BAR_MM; mm += 5) {
    const long = mm % 50 === 0 ? 3 : mm % 10 === 0 ? 2 : 1.2;
    page.line(x + mm, y, x + mm, y - long, { widthMm: mm % 50 === 0 ? FINE_MM * 1.5 : HAIR_MM });
  }
  for (const mm of [0, CHECK_BAR_MM / 2, CHECK_BAR_MM])
    page.text(`${mm}`, x + mm, y - 3.5, { sizePt: TYPE.tiny, align: 'middle' });
  page.text('mm', x + CHECK_BAR_MM + 3, y - 0.6, { sizePt: TYPE.tiny });
}

function inches(page: Page, x: number, y: number): void {
  for (let quarter = 0; quarter <= CHECK_BAR_IN * 4; quarter++) {
    const at = x + (quarter * MM_PER_INCH) / 4;
    page.line(at, y, at, y + (quarter % 4 === 0 ? 3 : 1.4), { widthMm: quarter % 4 === 0 ? FINE_MM * 1.5 : HAIR_MM });
  }
  page.line(x, y, x + CHECK_BAR_IN * MM_PER_INCH, y, { widthMm: FINE_MM });
  for (let inch = 0; inch <= CHECK_BAR_IN; inch++)
    page.text(`${inch}`, x + inch * MM_PER_INCH, y + 5.4, { sizePt: TYPE.tiny, align: 'middle' });
  page.text('in', x + CHECK_BAR_IN * MM_PER_INCH + 2.4, y + 5.4, { sizePt: TYPE.tiny });
}
