import type { Block } from './block.ts';
import type { Page } from './page.ts';
import type { Paper } from './paper.ts';
import { MARGIN_MM } from './style.ts';

/** What stands at the top and the foot of every page of one hose. */
export interface Frame {
  /** mm from the bottom edge that are kept for the foot */
  readonly footMm: number;
  /** Draws the head of a page, in full on the first; answers where the room below it begins, mm from the top. */
  drawHead(page: Page, first: boolean): number;
}

/** Sets blocks down pages, beginning a new page where the next block would not fit. */
export class Flow {
  readonly #paper: Paper;
  readonly #frame: Frame;
  #page: Page | null = null;
  #y = 0;

  constructor(paper: Paper, frame: Frame) {
    this.#paper = paper;
    this.#frame = frame;
  }

  /** Sets one block, then leaves a gap below it. `keepMm` is the height of what must stand under it on the same page. */
  add(block: Block, gapMm = 0, keepMm = 0): void {
    if (!this.#page || block.heightMm + keepMm > this.#roomMm()) this.newPage();
    block.draw(this.#page!, MARGIN_MM, this.#y);
    this.#y += block.heightMm + gapMm;
  }

  /** Sets rows under a title; the title comes again on every page they go over to. */
  addTable(title: Block, rows: readonly Block[]): void {
    const first = rows[0];
    if (!first) return;
    if (!this.#page || title.heightMm + first.heightMm > this.#roomMm()) this.newPage();
    this.add(title);
    for (const row of rows) {
      if (row.heightMm > this.#roomMm()) {
        this.newPage();
        this.add(title);
      }
      this.add(row);
    }
  }

  /** Would this block still go on the page as it stands? */
  fits(block: Block): boolean {
    return this.#page !== null && block.heightMm <= this.#roomMm();
  }

  gap(mm: number): void {
    this.#y += mm;
  }

  newPage(): void {
    const first = this.#page === null;
    this.#page = this.#paper.addPage();
    this.#y = this.#frame.drawHead(this.#page, first);
  }

  #roomMm(): number {
    return this.#page ? this.#page.heightMm - this.#frame.footMm - this.#y : 0;
  }
}
