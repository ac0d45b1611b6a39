import type { Page } from './page.ts';

/** A piece of a sheet of a known height that can stand anywhere down a page. */
export interface Block {
  readonly heightMm: number;
  draw(page: Page, x: number, y: number): void;
}

/** Blocks one under another as one block. */
export function stack(blocks: readonly Block[], gapMm = 0): Block {
  const heightMm = blocks.reduce((sum, b) => sum + b.heightMm, 0) + gapMm * Math.max(0, blocks.length - 1);
  return {
    heightMm,
    draw: (page, x, y) => {
      let down = y;
      for (const block of blocks) {
        block.draw(page, x, down);
        down += block.heightMm + gapMm;
      }
    },
  };
}

/** Blocks beside one another, tops level; each with its distance from the left. */
export function beside(parts: readonly { atMm: number; block: Block }[]): Block {
  return {
    heightMm: Math.max(...parts.map((p) => p.block.heightMm)),
    draw: (page, x, y) => {
      for (const { atMm, block } of parts) block.draw(page, x + atMm, y);
    },
  };
}

export function space(heightMm: number): Block {
  return { heightMm, draw: () => undefined };
}
