import { degreesApart } from '../../base/units.ts';
import type { Clock } from '../../document/lay/schema.ts';
import { hasNoSwivel, NO_SWIVEL_SENTENCE } from '../../document/wording/noSwivelWords.ts';
import { clockFace, type EndLetter, wrongWayRound } from '../clock/clockFace.ts';
import { clockDefinition, clockSentence, freeClockSentence, partCodeText } from '../clock/clockWords.ts';
import { drawFace } from '../clock/drawFace.ts';
import { DIALECT_WORDS, dialectSentence, formatDegrees, formatTurn } from '../format/index.ts';
import { type Block, beside, stack } from '../layout/block.ts';
import type { Page } from '../layout/page.ts';
import type { Paper } from '../layout/paper.ts';
import { FINE_MM, FORBID, GREY, TYPE } from '../layout/style.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';
import { wrapStripBlock } from './wrapStripBlock.ts';

type Angle = Extract<Clock, { kind: 'angle' }>;

const FACE_MM = 17;
const WRONG_FACE_MM = 13;
const FACE_ROOM_MM = 53;

/** The clock card: the angle in words from both ends, as clock faces, as a strip at 1:1, and the wrong one struck out. */
export function clockCard(subject: LaidSubject): Block {
  const { paper, lay, widthMm } = subject;
  const title = heading('Clock card', widthMm);
  if (lay.clock.kind === 'free')
    return stack([title, textBlock(paper, freeClockSentence(lay.clock), widthMm, { sizePt: TYPE.strong })], 1);
  const clock = lay.clock;
  return stack(
    [title, words(subject, clock), ...noSwivel(subject, clock), faces(subject, clock), wrapStripBlock(subject, clock)],
    1.5,
  );
}

function words(subject: LaidSubject, clock: Angle): Block {
  const { paper, widthMm } = subject;
  const left = 47;
  const right = widthMm - left;
  return beside([
    { atMm: 0, block: value(clock) },
    {
      atMm: left,
      block: stack(
        [
          fromEnd(paper, clock.deg, 'A', right),
          fromEnd(paper, clock.deg, 'B', right),
          textBlock(paper, clockDefinition(clock.deg), right, { sizePt: TYPE.small, colour: GREY }),
          forTheShop(subject, clock, right),
        ],
        1.4,
      ),
    },
  ]);
}

function fromEnd(paper: Paper, deg: number, viewer: EndLetter, widthMm: number): Block {
  const at = 14;
  return beside([
    { atMm: 0, block: textBlock(paper, `From ${viewer}`, at, { sizePt: TYPE.small + 0.6, bold: true }) },
    {
      atMm: at,
      block: textBlock(paper, clockSentence(deg, viewer).replaceAll(" o'clock", "\u00a0o'clock"), widthMm - at, {
        sizePt: TYPE.small + 0.6,
      }),
    },
  ]);
}

function value(clock: Angle): Block {
  return {
    heightMm: 27,
    draw: (page, x, y) => {
      page.text('CLOCK', x, y + 3.4, { sizePt: TYPE.small, bold: true });
      page.text(formatDegrees(clock.deg), x, y + 14.6, { sizePt: TYPE.huge, bold: true });
      page.text(`Tolerance ± ${formatTurn(clock.toleranceDeg)}`, x, y + 19.4, { sizePt: TYPE.body });
      page.text('Measured', x, y + 25.6, { sizePt: TYPE.body });
      page.line(x + 16, y + 26, x + 42, y + 26, { widthMm: FINE_MM });
      page.text('°', x + 43, y + 25.6, { sizePt: TYPE.body });
    },
  };
}

/** The same hose in the words of the shop that makes it, as the project has chosen; and as a part number codes it. */
function forTheShop({ paper, input }: LaidSubject, clock: Angle, widthMm: number): Block {
  const dialect = input.project.paperwork?.clockDialect ?? 'near-at-six';
  const text = `For the hose shop (${DIALECT_WORDS[dialect]}): ${dialectSentence(clock.deg, dialect)} Part code ${partCodeText(clock.deg)}.`;
  return textBlock(paper, text.replaceAll(" o'clock", "\u00a0o'clock"), widthMm, { sizePt: TYPE.small });
}

/** What is left to the hose where no nut takes up an error: the twist that the tolerance alone may put in it. */
function noSwivel({ paper, run, lay, widthMm }: LaidSubject, clock: Angle): Block[] {
  if (!hasNoSwivel(run.a.end, run.b.end)) return [];
  const perMetre = clock.toleranceDeg / (lay.liveLengthMm / 1000);
  const text = `${NO_SWIVEL_SENTENCE} ${formatTurn(clock.toleranceDeg)} over the live length is ${formatTurn(perMetre, 'up')} of twist a metre. How to mark it at its ports first: see the list before the second end.`;
  return [textBlock(paper, text, widthMm, { sizePt: TYPE.small + 0.6, bold: true })];
}

/** Is the hose read the wrong way round still the right hose, within its tolerance? True near 0 and 180. */
function readsBothWays(clock: Angle): boolean {
  return degreesApart(clock.deg, wrongWayRound(clock.deg)) <= clock.toleranceDeg;
}

function faces(subject: LaidSubject, clock: Angle): Block {
  const { widthMm } = subject;
  const wrongWidth = widthMm - 2 * FACE_ROOM_MM - 4;
  return {
    heightMm: 2 * FACE_MM + 19,
    draw: (page, x, y) => {
      (['A', 'B'] as const).forEach((viewer, i) => {
        drawRight(page, clock.deg, viewer, x + FACE_ROOM_MM * (i + 0.5), y);
      });
      const left = x + 2 * FACE_ROOM_MM + 4;
      if (readsBothWays(clock)) sameBothWays(page, left, y, wrongWidth);
      else drawWrong(page, clock, left, y, wrongWidth);
    },
  };
}

function drawRight(page: Page, deg: number, viewer: EndLetter, x: number, y: number): void {
  const face = clockFace(deg, viewer);
  page.text(`Seen from END ${viewer}`, x, y + 3.4, { sizePt: TYPE.body, bold: true, align: 'middle' });
  drawFace(page, face, { x, y: y + 9.6 + FACE_MM, radiusMm: FACE_MM, hoseRadiusMm: 4.2, wrong: false });
  const foot = y + 2 * FACE_MM + 16.6;
  page.text(`● END ${face.near.end} near   ○ END ${face.far.end} far`, x, foot, {
    sizePt: TYPE.small,
    align: 'middle',
  });
}

function drawWrong(page: Page, clock: Angle, x: number, y: number, widthMm: number): void {
  const wrong = wrongWayRound(clock.deg);
  page.rectangle(x, y, widthMm, 2 * FACE_MM + 18, { line: FORBID, widthMm: 0.4 });
  page.text('NOT THIS', x + widthMm / 2, y + 5.6, { sizePt: TYPE.strong, bold: true, colour: FORBID, align: 'middle' });
  const room = widthMm / 2;
  (['A', 'B'] as const).forEach((viewer, i) => {
    const middle = x + room * (i + 0.5);
    const across = WRONG_FACE_MM;
    drawFace(page, clockFace(wrong, viewer), {
      x: middle,
      y: y + 24.5,
      radiusMm: across,
      hoseRadiusMm: 2.8,
      wrong: true,
    });
    page.text(`from END ${viewer}`, middle, y + 41.5, { sizePt: TYPE.small, align: 'middle' });
  });
  page.paragraph(
    `${formatDegrees(wrong)} is the mirror image: ${formatTurn(degreesApart(wrong, clock.deg))} off, and scrap.`,
    x + 3,
    y + 44.4,
    widthMm - 6,
    { sizePt: TYPE.small, align: 'middle' },
  );
}

function sameBothWays(page: Page, x: number, y: number, widthMm: number): void {
  page.paragraph(
    'This clock reads the same both ways round, within its tolerance: there is no mirror image to fear.',
    x + 4,
    y + 16,
    widthMm - 8,
    { sizePt: TYPE.body },
  );
}
