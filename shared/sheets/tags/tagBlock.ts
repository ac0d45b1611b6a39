import type { Lay } from '../../document/lay/schema.ts';
import { hoseTag, type TagLine } from '../../document/tag/hoseTag.ts';
import { FLUID_WORDS } from '../../document/wording/serviceWords.ts';
import { formatDash, formatTemperature, type LengthWriter } from '../format/index.ts';
import type { SheetRun } from '../input.ts';
import type { Block } from '../layout/block.ts';
import { fitted } from '../layout/fitted.ts';
import type { Page } from '../layout/page.ts';
import { FINE_MM, GREY, TYPE } from '../layout/style.ts';

/** What is needed for the tags of one hose. */
export interface Tagged {
  readonly run: SheetRun;
  readonly lay: Lay;
  readonly write: LengthWriter;
  /** room between the margins, mm */
  readonly widthMm: number;
  readonly isExample: boolean;
}

/** mm: the hose's own tag with a line for each of its facts, and beside it the tags of its two ends, one under the other. */
const HOSE_TAG = { wideMm: 104, tallMm: 56.5 } as const;
const BETWEEN_MM = 4;
/** mm. The hole for a wire or a tie, and where words begin beside it. */
const HOLE = { radiusMm: 2, atMm: 5.4 } as const;
const WORDS_AT_MM = 11;
const LABEL_MM = 20;
/** where the first line stands in a tag, and from line to line */
const LINES = { fromMm: 11.6, stepMm: 3.75 } as const;
const PAD_MM = 3;

/** The tags of one hose: what it is, and for each end which it is and where it goes. */
export function tagBlock(tagged: Tagged): Block {
  const { run, widthMm } = tagged;
  const endTallMm = (HOSE_TAG.tallMm - BETWEEN_MM) / 2;
  const endWideMm = widthMm - HOSE_TAG.wideMm - BETWEEN_MM;
  return {
    heightMm: HOSE_TAG.tallMm,
    draw: (page, x, y) => {
      drawHoseTag(page, tagged, x, y);
      for (const [i, tag] of (['A', 'B'] as const).entries()) {
        const at = { x: x + HOSE_TAG.wideMm + BETWEEN_MM, y: y + i * (endTallMm + BETWEEN_MM) };
        drawEndTag(page, run, tag, { ...at, wideMm: endWideMm, tallMm: endTallMm });
      }
    },
  };
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly wideMm: number;
  readonly tallMm: number;
}

/** The outline to cut along, dashed, with the hole. */
function drawOutline(page: Page, { x, y, wideMm, tallMm }: Place): void {
  page.rectangle(x, y, wideMm, tallMm, { widthMm: FINE_MM, dashMm: [2, 1.4] });
  page.circle(x + HOLE.atMm, y + tallMm / 2, HOLE.radiusMm, { widthMm: FINE_MM });
}

function drawHoseTag(page: Page, { run, lay, write, isExample }: Tagged, x: number, y: number): void {
  const { wideMm, tallMm } = HOSE_TAG;
  drawOutline(page, { x, y, wideMm, tallMm });
  const left = x + WORDS_AT_MM;
  const roomMm = wideMm - WORDS_AT_MM - PAD_MM;
  const title = isExample ? `${run.run.name} (example)` : run.run.name;
  page.text(fitted(page, title, roomMm, TYPE.strong), left, y + 6, { sizePt: TYPE.strong, bold: true });
  tagLines(run, write.cut(lay.cutLengthMm)).forEach((line, i) => {
    drawLine(page, line, left, y + LINES.fromMm + i * LINES.stepMm, roomMm);
  });
}

/** The tag's own lines, with what it carries and what it was cut to beside what it is made of. */
function tagLines(run: SheetRun, cut: string): readonly TagLine[] {
  const { fluid, temperatureC } = run.run.service;
  const carries = `${FLUID_WORDS[fluid]}, ${formatTemperature(temperatureC)}`;
  return hoseTag(run).flatMap((line) =>
    line.label === 'Made of' ? [{ label: 'Carries', value: carries }, line, { label: 'Cut to', value: cut }] : [line],
  );
}

function drawLine(page: Page, { label, value }: TagLine, x: number, y: number, roomMm: number): void {
  page.text(label, x, y, { sizePt: TYPE.tiny, colour: GREY });
  if (value === undefined) page.line(x + LABEL_MM, y + 0.6, x + roomMm, y + 0.6, { widthMm: FINE_MM });
  else page.text(fitted(page, value, roomMm - LABEL_MM + 4, TYPE.small), x + LABEL_MM, y, { sizePt: TYPE.small });
}

/** An end's tag: which end it is, large, the port it goes to, and whose hose it is. */
function drawEndTag(page: Page, run: SheetRun, tag: 'A' | 'B', place: Place): void {
  drawOutline(page, place);
  const { x, y, wideMm } = place;
  const left = x + WORDS_AT_MM;
  const roomMm = wideMm - WORDS_AT_MM - PAD_MM;
  const { port } = tag === 'A' ? run.a : run.b;
  const line = (text: string, downMm: number, look: Parameters<Page['text']>[3] & { sizePt: number }): void =>
    page.text(fitted(page, text, roomMm + 4, look.sizePt), left, y + downMm, look);
  line(`END ${tag}`, 8, { sizePt: TYPE.head, bold: true });
  line(`to ${port.name}`, 13.4, { sizePt: TYPE.body, bold: true });
  line(port.id, 17.4, { sizePt: TYPE.small, colour: GREY });
  line(`${run.run.name}, ${formatDash(run.hose.dash)}`, 22.6, { sizePt: TYPE.small });
}
