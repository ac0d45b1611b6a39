import type { Block } from '../layout/block.ts';
import type { Page } from '../layout/page.ts';
import { FORBID, lineHeightMm, TYPE, WHITE } from '../layout/style.ts';
import type { Subject } from './subject.ts';

const SIGN_MM = 13;

/** The band that forbids the saw, with every reason. Only for a hose that may not be cut. */
export function forbidBand({ paper, verdict, widthMm }: Subject): Block {
  const textWidth = widthMm - SIGN_MM - 9;
  const reasons = verdict.reasons.flatMap((reason) => paper.bold.wrap(`• ${reason}`, TYPE.body, textWidth));
  const step = lineHeightMm(TYPE.body);
  const heightMm = Math.max(SIGN_MM + 5, 11.5 + reasons.length * step);
  return {
    heightMm,
    draw: (page, x, y) => {
      page.rectangle(x, y, widthMm, heightMm, { line: null, fill: FORBID });
      drawOctagon(page, x + 3 + SIGN_MM / 2, y + heightMm / 2, SIGN_MM / 2);
      const left = x + SIGN_MM + 6;
      page.text('DO NOT CUT', left, y + 7.4, { sizePt: 15, bold: true, colour: WHITE });
      reasons.forEach((line, i) => {
        page.text(line, left, y + 12.6 + i * step, { sizePt: TYPE.body, bold: true, colour: WHITE });
      });
    },
  };
}

function drawOctagon(page: Page, x: number, y: number, radiusMm: number): void {
  const corners = Array.from({ length: 8 }, (_, i): [number, number] => {
    const angle = ((i + 0.5) * Math.PI) / 4;
    return [x + radiusMm * Math.cos(angle), y + radiusMm * Math.sin(angle)];
  });
  page.path(corners, { line: WHITE, widthMm: 0.7 }, true);
  page.rectangle(x - radiusMm * 0.58, y - radiusMm * 0.16, radiusMm * 1.16, radiusMm * 0.32, {
    line: null,
    fill: WHITE,
  });
}
