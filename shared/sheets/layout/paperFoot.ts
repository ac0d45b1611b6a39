import { RULE_PACK_DATE } from '../../document/rules/index.ts';
import type { SheetInput } from '../input.ts';
import type { Page } from './page.ts';
import { FINE_MM, GREY, MARGIN_MM, TYPE } from './style.ts';

/** The foot of a page: what a paper is not, what it was drawn from, and at its right which page it is. */
export function drawPaperFoot(page: Page, { report, printedOn }: SheetInput, right: string): void {
  const y = page.heightMm - 13.4;
  page.line(MARGIN_MM, y, page.widthMm - MARGIN_MM, y, { widthMm: FINE_MM });
  const look = { sizePt: TYPE.tiny };
  page.text(
    'Hosewright advises; it never certifies a hose. Parts’ makers, local codes and licensed practice decide.',
    MARGIN_MM,
    y + 3.4,
    look,
  );
  page.text(
    `Printed ${printedOn}  ·  input ${report.project.inputHash.slice(0, 16)}  ·  solver ${report.solverVersion}, seed ${report.seed}  ·  rules of ${RULE_PACK_DATE}`,
    MARGIN_MM,
    y + 6.6,
    { ...look, colour: GREY },
  );
  page.text(right, page.widthMm - MARGIN_MM, y + 3.4, { ...look, align: 'right' });
}
