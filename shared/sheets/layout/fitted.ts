import type { Page } from './page.ts';

/** The text, or as much of it as fits one line of `widthMm` with a sign that it goes on; measured in the bold type. */
export function fitted(page: Page, text: string, widthMm: number, sizePt: number): string {
  const lines = page.face(true).wrap(text, sizePt, widthMm - 4);
  return lines.length > 1 ? `${lines[0]} …` : text;
}
