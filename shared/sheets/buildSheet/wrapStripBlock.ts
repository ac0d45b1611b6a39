import type { Clock } from '../../document/lay/schema.ts';
import { type WrapStrip, wrapStrip } from '../clock/wrapStrip.ts';
import { formatDegrees, formatMm } from '../format/index.ts';
import { type Block, beside, stack } from '../layout/block.ts';
import type { Page } from '../layout/page.ts';
import { FINE_MM, GREY, HAIR_MM, INK, TYPE } from '../layout/style.ts';
import { textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

type Angle = Extract<Clock, { kind: 'angle' }>;

const STRIP_MM = 15;
/** Paper past the joining line, to hold by. */
const TAB_MM = 9;
/** Lines nearer than this leave no room for two letters between them. */
const CLOSE_MM = 9;
/** Room that the words need to stand beside the strip rather than above it. */
const LEAST_WORDS_MM = 85;

/** The wrap strip at 1:1 with its words; where the hose is too thick for the page's width, it is drawn in pieces. */
export function wrapStripBlock(subject: LaidSubject, clock: Angle): Block {
  const { paper, run, widthMm } = subject;
  const odMm = run.hose.outsideDiameterMm;
  const strip = wrapStrip(odMm, clock.deg);
  const pieceMm = Math.min(strip.circumferenceMm, widthMm - TAB_MM - 2);
  const pieces = Math.ceil(strip.circumferenceMm / pieceMm - 1e-9);
  const rows = Array.from({ length: pieces }, (_, i) => pieceBlock(strip, i * pieceMm, pieceMm));
  const words =
    `Wrap strip at 1:1, for the bare hose of ${formatMm(odMm)} outside (put it on before any sleeve). Cut it out, wrap it round the hose ` +
    `with this print outward and the edge marked A towards END A; the two ends meet at the line B. Line A is in line with the outlet of ` +
    `END A, line B with the outlet of END B. Line to line the way of the arrow ${formatMm(strip.arcMm)} for ${formatDegrees(clock.deg)}, ` +
    `once round ${formatMm(strip.circumferenceMm)}. Good only if the check bar measures true.` +
    (pieces > 1 ? ` In ${pieces} pieces: join each to the next at its right-hand line.` : '');
  const stripMm = strip.circumferenceMm + TAB_MM + 5;
  if (widthMm - stripMm < LEAST_WORDS_MM)
    return stack([textBlock(paper, words, widthMm, { sizePt: TYPE.small }), ...rows], 1.5);
  return beside([
    { atMm: 0, block: stack(rows) },
    { atMm: stripMm, block: textBlock(paper, words, widthMm - stripMm, { sizePt: TYPE.tiny + 0.4 }) },
  ]);
}

function pieceBlock(strip: WrapStrip, fromMm: number, pieceMm: number): Block {
  const toMm = Math.min(strip.circumferenceMm, fromMm + pieceMm);
  return {
    heightMm: STRIP_MM + 1,
    draw: (page, x, y) => {
      const at = (mm: number): number => x + mm - fromMm;
      page.rectangle(x, y, toMm - fromMm + TAB_MM, STRIP_MM, { widthMm: HAIR_MM, dashMm: [1.5, 1], line: GREY });
      edgeWords(page, widestGap(strip, fromMm, toMm).map(at) as [number, number], y);
      // Too near line A for a letter between them, line B is named at the joining line only.
      if (fromMm === 0) mark(page, at(strip.bMm), y, strip.arcMm < CLOSE_MM ? '' : 'B', 1);
      if (toMm === strip.circumferenceMm) joinLine(page, at(toMm), y, 'B');
      else joinLine(page, at(toMm), y, '');
      if (strip.aMm >= fromMm && strip.aMm <= toMm)
        mark(page, at(strip.aMm), y, 'A', strip.aMm - fromMm < CLOSE_MM ? 1 : -1);
      arrow(page, Math.min(at(strip.aMm), at(toMm)), Math.max(at(strip.bMm), x), y + STRIP_MM / 2);
    },
  };
}

/** The widest stretch of a piece that no clock line crosses. */
function widestGap(strip: WrapStrip, fromMm: number, toMm: number): [number, number] {
  const inside = strip.aMm > fromMm && strip.aMm < toMm ? [strip.aMm] : [];
  const stops = [fromMm, ...inside, toMm];
  const gaps = stops.slice(1).map((to, i): [number, number] => [stops[i]!, to]);
  return gaps.reduce((best, gap) => (gap[1] - gap[0] > best[1] - best[0] ? gap : best));
}

/** Which edge goes where, short enough to stay on the strip when it is cut out. */
function edgeWords(page: Page, [left, right]: [number, number], y: number): void {
  const look = { sizePt: TYPE.tiny, align: 'middle', bold: true } as const;
  page.text('▲ END B', (left + right) / 2, y + 3.2, look);
  page.text('▼ END A', (left + right) / 2, y + STRIP_MM - 1.4, look);
}

function mark(page: Page, x: number, y: number, letter: string, side: 1 | -1): void {
  page.line(x, y, x, y + STRIP_MM, { widthMm: 0.4, line: INK });
  page.text(letter, x + side * 2.4, y + STRIP_MM / 2 - 1.4, { sizePt: TYPE.strong, bold: true, align: 'middle' });
}

function joinLine(page: Page, x: number, y: number, letter: string): void {
  page.line(x, y, x, y + STRIP_MM, letter === '' ? { widthMm: FINE_MM, dashMm: [2, 1] } : { widthMm: 0.4 });
  page.text(letter, x + 2.4, y + STRIP_MM / 2 - 1.4, { sizePt: TYPE.strong, bold: true, align: 'middle' });
  page.text('tab', x + TAB_MM / 2, y + STRIP_MM - 1.2, { sizePt: TYPE.tiny, colour: GREY, align: 'middle' });
}

/** From line A leftward to line B: counter-clockwise as looked along the hose from END A. */
function arrow(page: Page, fromX: number, toX: number, y: number): void {
  if (fromX - toX < 4) return;
  page.line(fromX, y, toX, y, { widthMm: FINE_MM });
  page.path(
    [
      [toX, y],
      [toX + 2.4, y - 0.7],
      [toX + 2.4, y + 0.7],
    ],
    { line: null, fill: INK },
    true,
  );
}
