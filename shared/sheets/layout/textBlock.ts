import type { Block } from './block.ts';
import type { TextLook } from './page.ts';
import type { Paper } from './paper.ts';
import { FINE_MM, INK, lineHeightMm, TYPE } from './style.ts';

/** A paragraph as a block. */
export function textBlock(paper: Paper, text: string, widthMm: number, look: TextLook = {}): Block {
  const sizePt = look.sizePt ?? TYPE.body;
  const lines = (look.bold ? paper.bold : paper.regular).wrap(text, sizePt, widthMm).length;
  return {
    heightMm: lines * lineHeightMm(sizePt),
    draw: (page, x, y) => {
      page.paragraph(text, x, y, widthMm, look);
    },
  };
}

/** A heading: small bold capitals over a rule across the width. */
export function heading(text: string, widthMm: number): Block {
  return {
    heightMm: 5.6,
    draw: (page, x, y) => {
      page.text(text.toUpperCase(), x, y + 3, { sizePt: TYPE.small, bold: true });
      page.line(x, y + 4.3, x + widthMm, y + 4.3, { widthMm: FINE_MM * 1.5, line: INK });
    },
  };
}

/** A line with an empty square to tick. */
export function tickBlock(paper: Paper, text: string, widthMm: number, sizePt: number = TYPE.body): Block {
  const indent = 5.2;
  const body = textBlock(paper, text, widthMm - indent, { sizePt });
  const side = 3;
  return {
    heightMm: body.heightMm + 1.1,
    draw: (page, x, y) => {
      page.rectangle(x + 0.2, y + 0.3, side, side, { widthMm: 0.3 });
      body.draw(page, x + indent, y);
    },
  };
}
