import { type Block, stack } from '../layout/block.ts';
import { heading } from '../layout/textBlock.ts';

const GUTTER_MM = 6;

/** A heading over blocks in two columns, in their order down the left and then the right, as even as they come. */
export function tickColumns(title: string, widthMm: number, blocksOf: (columnMm: number) => readonly Block[]): Block {
  const half = (widthMm - GUTTER_MM) / 2;
  const columns = evenColumns(blocksOf(half));
  return stack([
    heading(title, widthMm),
    {
      heightMm: Math.max(columns[0].heightMm, columns[1].heightMm),
      draw: (page, x, y) => {
        columns[0].draw(page, x, y);
        columns[1].draw(page, x + half + GUTTER_MM, y);
      },
    },
  ]);
}

function evenColumns(blocks: readonly Block[]): readonly [Block, Block] {
  const splits = blocks.map((_, i) => [stack(blocks.slice(0, i + 1)), stack(blocks.slice(i + 1))] as const);
  const tall = ([left, right]: readonly [Block, Block]): number => Math.max(left.heightMm, right.heightMm);
  return splits.reduce((best, split) => (tall(split) < tall(best) ? split : best));
}
