import { LENGTH_FIGURE, lengthFigure } from '../../document/lay/lengthFigure.ts';
import type { MeasuredLength } from '../../document/lay/sameMeasure.ts';
import { lengthsOfRun } from '../bench/lengthsOfRun.ts';
import { formatMm } from '../format/index.ts';
import { type Block, beside, space, stack } from '../layout/block.ts';
import { GREY, TYPE } from '../layout/style.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import { drawFigure } from '../straight/drawFigure.ts';
import type { LaidSubject } from './subject.ts';

const FIGURE_MM = 42;
const GUTTER_MM = 6;

/** The hose's length by every name that fits its ends, each with a drawing of where it is measured; in rows of two. */
export function lengthsBlock(subject: LaidSubject): Block {
  const half = (subject.widthMm - GUTTER_MM) / 2;
  const cards = lengthsOfRun(subject.run, subject.lay).map((length) => lengthCard(subject, length, half));
  const title = subject.verdict.mayCut ? 'Lengths by name' : 'Lengths by name: for information only';
  const rows = cards
    .filter((_, i) => i % 2 === 0)
    .map((left, row) => {
      const right = cards[2 * row + 1];
      return beside([
        { atMm: 0, block: left },
        ...(right === undefined ? [] : [{ atMm: half + GUTTER_MM, block: right }]),
      ]);
    });
  return stack([heading(title, subject.widthMm), space(1), stack(rows, 1.5)]);
}

function lengthCard(subject: LaidSubject, length: MeasuredLength, widthMm: number): Block {
  const { paper, run } = subject;
  const perUnit = FIGURE_MM / LENGTH_FIGURE.width;
  const shapes = lengthFigure({ a: run.a.end, b: run.b.end }, length.datum);
  const at = FIGURE_MM + 3;
  const room = widthMm - at;
  const words = stack([
    textBlock(paper, nameOf(length), room, { sizePt: TYPE.tiny + 0.4, bold: true }),
    textBlock(paper, valueText(subject, length), room, {
      sizePt: length.lengthMm === undefined ? TYPE.tiny + 0.4 : TYPE.body,
      bold: length.lengthMm !== undefined,
    }),
    textBlock(paper, detailsOf(length), room, { sizePt: TYPE.tiny, colour: GREY }),
  ]);
  const figure: Block = {
    heightMm: LENGTH_FIGURE.height * perUnit + 1,
    draw: (page, x, y) => drawFigure(page, shapes, x, y + 0.6, perUnit),
  };
  return beside([
    { atMm: 0, block: figure },
    { atMm: at, block: words },
  ]);
}

function nameOf({ names }: MeasuredLength): string {
  return names.map((name, i) => (i === 0 ? name : name.toLowerCase())).join(' = ');
}

function valueText({ write }: LaidSubject, { lengthMm, missing, convention }: MeasuredLength): string {
  if (lengthMm === undefined) return `not known: the table of ends lacks ${(missing ?? []).join(', and ')}`;
  return convention === 'shoulder-to-shoulder' ? write.cut(lengthMm) : write.both(lengthMm);
}

function detailsOf({ from, to, addedMm, notes, convention }: MeasuredLength): string {
  const added =
    addedMm === undefined || convention === 'shoulder-to-shoulder'
      ? ''
      : ` Cut length, ${plus(addedMm.a)} at END A, ${plus(addedMm.b)} at END B.`;
  return `${from.charAt(0).toUpperCase()}${from.slice(1)} to ${to}.${added}${(notes ?? []).map((note) => ` ${note}.`).join('')}`;
}

function plus(mm: number): string {
  return mm < 0 ? `less ${formatMm(-mm)}` : `plus ${formatMm(mm)}`;
}
