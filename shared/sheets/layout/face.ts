import type { PDFFont } from '@cantoo/pdf-lib';
import { MM_PER_POINT } from './style.ts';

/** One weight of the papers' type: measures and wraps text, and knows which letters it can show. */
export class Face {
  readonly font: PDFFont;
  readonly #known: ReadonlySet<number>;

  constructor(font: PDFFont) {
    this.font = font;
    this.#known = new Set(font.getCharacterSet());
  }

  /** The text with every letter this type lacks replaced by a visible box, so nothing is lost in silence. */
  shown(text: string): string {
    const letters = Array.from(text.replace(/\s+/g, ' '));
    return letters.map((c) => (this.#known.has(c.codePointAt(0) ?? 0) ? c : '\u25AF')).join('');
  }

  /** Width of one line in mm at a size in points. */
  widthMm(text: string, sizePt: number): number {
    return this.font.widthOfTextAtSize(this.shown(text), sizePt) * MM_PER_POINT;
  }

  /** The text broken at spaces into lines of at most `widthMm`; a word longer than a line is broken where it must be. */
  wrap(text: string, sizePt: number, widthMm: number): string[] {
    const lines: string[] = [];
    for (const paragraph of text.split('\n')) lines.push(...this.#wrapParagraph(paragraph, sizePt, widthMm));
    return lines;
  }

  #wrapParagraph(text: string, sizePt: number, widthMm: number): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(/\s+/).flatMap((w) => this.#breakWord(w, sizePt, widthMm))) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && this.widthMm(longer, sizePt) > widthMm) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    lines.push(line);
    return lines;
  }

  #breakWord(word: string, sizePt: number, widthMm: number): string[] {
    if (this.widthMm(word, sizePt) <= widthMm) return [word];
    const pieces: string[] = [];
    let piece = '';
    for (const letter of Array.from(word)) {
      if (piece !== '' && this.widthMm(piece + letter, sizePt) > widthMm) {
        pieces.push(piece);
        piece = letter;
      } else piece += letter;
    }
    pieces.push(piece);
    return pieces;
  }
}
