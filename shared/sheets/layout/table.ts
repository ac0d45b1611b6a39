import type { Block } from './block.ts';
import type { Page } from './page.ts';
import type { Paper } from './paper.ts';
import { GREY, HAIR_MM, lineHeightMm, RULE, TYPE } from './style.ts';

export interface Column {
  readonly title: string;
  readonly widthMm: number;
  readonly bold?: boolean;
}

/** A cell: text, or something drawn in the cell's top left corner with its height. */
export type Cell = string | { readonly heightMm: number; draw(page: Page, x: number, y: number): void };

const PADDING_MM = 0.9;
const GUTTER_MM = 2;

/** A table as blocks, one per row and one for the titles, so that it can go over a page's end between rows. */
export function tableRows(
  paper: Paper,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  sizePt: number = TYPE.small,
): { titles: Block; rows: Block[] } {
  return { titles: titleRow(columns), rows: rows.map((cells) => tableRow(paper, columns, cells, sizePt)) };
}

function titleRow(columns: readonly Column[]): Block {
  return {
    heightMm: 4.2,
    draw: (page, x, y) => {
      let left = x;
      for (const column of columns) {
        page.text(column.title, left, y + 2.7, { sizePt: TYPE.tiny, colour: GREY });
        left += column.widthMm;
      }
      page.line(x, y + 3.9, left, y + 3.9, { widthMm: HAIR_MM, line: RULE });
    },
  };
}

function tableRow(paper: Paper, columns: readonly Column[], cells: readonly Cell[], sizePt: number): Block {
  const heights = columns.map((column, i) => cellHeight(paper, column, cells[i] ?? '', sizePt));
  const heightMm = Math.max(...heights) + 2 * PADDING_MM;
  return {
    heightMm,
    draw: (page, x, y) => {
      let left = x;
      columns.forEach((column, i) => {
        const cell = cells[i] ?? '';
        if (typeof cell !== 'string') cell.draw(page, left, y + PADDING_MM);
        else {
          const look = { sizePt, bold: column.bold ?? false };
          page.paragraph(cell, left, y + PADDING_MM, column.widthMm - GUTTER_MM, look);
        }
        left += column.widthMm;
      });
      page.line(x, y + heightMm, left, y + heightMm, { widthMm: HAIR_MM, line: RULE });
    },
  };
}

function cellHeight(paper: Paper, column: Column, cell: Cell, sizePt: number): number {
  if (typeof cell !== 'string') return cell.heightMm;
  const face = column.bold ? paper.bold : paper.regular;
  return face.wrap(cell, sizePt, column.widthMm - GUTTER_MM).length * lineHeightMm(sizePt);
}
