import type { PDFFont } from '@cantoo/pdf-lib';
import { MM_PER_POINT } from './style.ts';

/** Spaces that must not break: within a mixed number, before a unit, before an end's letter, before o'clock. */
function kept(text: string): string {
  return text
    .replace(/(?<=\d) (?=\d+\/\d|mm\b|in\b|kPa\b|psi\b|°|%|o'clock)/g, '\u00a0')
    .replace(/\bEND (?=[AB]\b)/g, 'END\u00a0');
}

/** One weight of the papers' type: measures and wraps text, and knows which letters it can show. */
export class Face {
  readonly font: PDFFont;
  readonly #known: ReadonlySet<number>;
  /** mm per point of size; shaping a text is the slow part, and sheets say the same words often */
  readonly #widths = new Map<string, number>();

  constructor(font: PDFFont) {
    this.font = font;
    this.#known = new Set(font.getCharacterSet());
  }

  /**
   * The text as set: apostrophes inside words curled, and every letter this type lacks replaced by a visible box, so that
   * nothing is lost in silence.
   */
  shown(text: string): string {
    const letters = Array.from(text.replace(/\s+/g, ' ').replace(/(?<=\w)'(?=\w)/g, '\u2019'));
    return letters.map((c) => (this.#known.has(c.codePointAt(0) ?? 0) ? c : '\u25AF')).join('');
  }

  /** Width of one line in mm at a size in points. */
  widthMm(text: string, sizePt: number): number {
    const known = this.#widths.get(text);
    const perPoint = known ?? this.font.widthOfTextAtSize(this.shown(text), 1) * MM_PER_POINT;
    if (known === undefined) this.#widths.set(text, perPoint);
    return perPoint * sizePt;
  }

  /** The text broken at spaces into lines of at most `widthMm`; a word longer than a line is broken where it must be. */
  wrap(text: string, sizePt: number, widthMm: number): string[] {
    const lines: string[] = [];
    for (const paragraph of kept(text).split('\n')) lines.push(...this.#wrapParagraph(paragraph, sizePt, widthMm));
    return lines;
  }

  #wrapParagraph(text: string, sizePt: number, widthMm: number): string[] {
    const lines: string[] = [];
    let line = '';
    let lineMm = 0;
    const spaceMm = this.widthMm(' ', sizePt);
    for (const word of text.split(/[^\S\u00a0]+/).flatMap((w) => this.#breakWord(w, sizePt, widthMm))) {
      const wordMm = this.widthMm(word, sizePt);
      if (line === '') [line, lineMm] = [word, wordMm];
      else if (lineMm + spaceMm + wordMm > widthMm) {
        lines.push(line);
        [line, lineMm] = [word, wordMm];
      } else [line, lineMm] = [`${line} ${word}`, lineMm + spaceMm + wordMm];
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
