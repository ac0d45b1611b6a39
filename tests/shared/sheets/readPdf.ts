import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether the tools that read a PDF back are on this machine; without them the tests of print are skipped. */
export const canReadPdf = ['pdftotext', 'pdftocairo'].every((tool) => spawnSync(tool, ['-v']).status === 0);
export const WHY_SKIPPED = 'skipped: pdftotext and pdftocairo (poppler) are not installed';

const MM_PER_POINT = 25.4 / 72;

function withFile<T>(bytes: Uint8Array, use: (file: string, out: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, bytes);
    return use(file, join(folder, 'out.txt'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The text of a PDF in reading order, page by page, spaces and apostrophes plain. */
export function pdfPages(bytes: Uint8Array): string[] {
  const text = withFile(bytes, (file) => execFileSync('pdftotext', ['-enc', 'UTF-8', file, '-'], { encoding: 'utf8' }));
  const plain = text.replaceAll('\u00a0', ' ').replaceAll('\u2019', "'");
  return plain
    .split('\f')
    .slice(0, -1)
    .map((page) => page.replace(/\s+/g, ' '));
}

/** The lines of a PDF as they stand on paper, left to right, runs of spaces as one. */
export function pdfLines(bytes: Uint8Array): string[] {
  const read = (file: string): string =>
    execFileSync('pdftotext', ['-layout', '-enc', 'UTF-8', file, '-'], { encoding: 'utf8' });
  return withFile(bytes, read)
    .split(/[\n\f]/)
    .map((line) => line.replace(/\s+/g, ' ').trim());
}

export interface Word {
  readonly text: string;
  readonly page: number;
  readonly pageWidthMm: number;
  readonly pageHeightMm: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

/** Every word with its box on its page. */
export function pdfWords(bytes: Uint8Array): Word[] {
  const xml = withFile(bytes, (file) => execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8' }));
  const words: Word[] = [];
  let [page, width, height] = [-1, 0, 0];
  for (const line of xml.split('\n')) {
    const size = /<page width="([\d.]+)" height="([\d.]+)"/.exec(line);
    if (size) [page, width, height] = [page + 1, Number(size[1]), Number(size[2])];
    const box = /<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*)<\/word>/.exec(line);
    if (!box) continue;
    const [left, top, right, bottom] = box.slice(1, 5).map((n) => Number(n) * MM_PER_POINT);
    words.push({
      text: box[5]!,
      page,
      pageWidthMm: width * MM_PER_POINT,
      pageHeightMm: height * MM_PER_POINT,
      leftMm: left!,
      topMm: top!,
      rightMm: right!,
      bottomMm: bottom!,
    });
  }
  return words;
}

export interface Stroke {
  readonly points: readonly (readonly [number, number])[];
}

/** Every straight-sided stroke of a page, its corners in mm on the paper. `page` counts from 0. */
export function pdfStrokes(bytes: Uint8Array, page: number): Stroke[] {
  const svg = withFile(bytes, (file, out) => {
    const only = `${page + 1}`;
    execFileSync('pdftocairo', ['-svg', '-noshrink', '-nocenter', '-f', only, '-l', only, file, out]);
    return readFileSync(out, 'utf8');
  });
  const strokes: Stroke[] = [];
  for (const match of svg.matchAll(
    /<path style="[^"]*stroke-width[^"]*" d="([^"C]*)" transform="matrix\(([^)]*)\)"/g,
  )) {
    const [a, b, c, d, e, f] = match[2]!.split(',').map(Number) as [number, number, number, number, number, number];
    const points = [...match[1]!.matchAll(/[ML] ([-\d.]+) ([-\d.]+)/g)].map((p): [number, number] => {
      const [x, y] = [Number(p[1]), Number(p[2])];
      return [(a * x + c * y + e) * MM_PER_POINT, (b * x + d * y + f) * MM_PER_POINT];
    });
    strokes.push({ points });
  }
  return strokes;
}
