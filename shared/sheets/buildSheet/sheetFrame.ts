import { FLUID_WORDS, PURPOSE_WORDS } from '../../document/wording/serviceWords.ts';
import { formatDash, formatPressure, formatTemperature } from '../format/index.ts';
import { drawExampleMark } from '../layout/exampleMark.ts';
import { fitted } from '../layout/fitted.ts';
import type { Frame } from '../layout/flow.ts';
import type { Page } from '../layout/page.ts';
import { drawPaperFoot } from '../layout/paperFoot.ts';
import { FORBID, GREY, MARGIN_MM, TYPE, WHITE } from '../layout/style.ts';
import type { Subject } from './subject.ts';

const TAG_WIDTH_MM = 52;

/** The head that every page of a hose's sheet carries: in full on the first, in one line on the others. */
export function sheetFrame(subject: Subject): Frame {
  const example = subject.input.project.exampleData;
  return {
    footMm: 17,
    drawHead: (page, first) => {
      if (!first) return drawShortHead(page, subject);
      drawTitle(page, subject);
      drawTag(page, subject);
      if (example) drawExampleMark(page, 33.4, subject.widthMm, NOT_TO_BUILD);
      return example ? 42 : 35.5;
    },
  };
}

function drawShortHead(page: Page, subject: Subject): number {
  const { input, run, verdict } = subject;
  page.text(fitted(page, run.run.name, page.widthMm - 2 * MARGIN_MM - 70, TYPE.strong + 2), MARGIN_MM, 15.6, {
    sizePt: TYPE.strong + 2,
    bold: true,
  });
  const right = page.widthMm - MARGIN_MM;
  const tag = `TAG ${fitted(page, run.run.id, 55, TYPE.body)}`;
  page.text(tag, right, 15.6, { sizePt: TYPE.body, bold: true, align: 'right' });
  page.line(MARGIN_MM, 18, right, 18, { widthMm: 0.4 });
  let y = 20;
  if (!verdict.mayCut) {
    page.rectangle(MARGIN_MM, y, subject.widthMm, 5, { line: null, fill: FORBID });
    page.text('DO NOT CUT: see the first page of this hose.', MARGIN_MM + 2.4, y + 3.5, {
      sizePt: TYPE.small,
      bold: true,
      colour: WHITE,
    });
    y += 6;
  }
  if (input.project.exampleData) {
    drawExampleMark(page, y, subject.widthMm, NOT_TO_BUILD);
    y += 6;
  }
  return y + 2.4;
}

function drawTitle(page: Page, { input, run, number }: Subject): void {
  const x = MARGIN_MM;
  page.text('BUILD SHEET', x, 14.4, { sizePt: TYPE.small, bold: true });
  const room = page.widthMm - 2 * MARGIN_MM - TAG_WIDTH_MM - 6;
  page.text(fitted(page, run.run.name, room, TYPE.head), x, 21.8, { sizePt: TYPE.head, bold: true });
  const { service } = run.run;
  page.text(
    `${input.project.name}  ·  hose ${number} of ${input.runs.length}  ·  ${run.a.port.name} to ${run.b.port.name}`,
    x,
    26.6,
    { sizePt: TYPE.small },
  );
  page.text(
    `${PURPOSE_WORDS[service.purpose]} · ${FLUID_WORDS[service.fluid]} · ${formatPressure(service.pressureKpa)} · ${formatTemperature(service.temperatureC)}`,
    x,
    30.4,
    { sizePt: TYPE.small, colour: GREY },
  );
}

function drawTag(page: Page, { run }: Subject): void {
  const x = page.widthMm - MARGIN_MM - TAG_WIDTH_MM;
  page.rectangle(x, 11.6, TAG_WIDTH_MM, 19, { widthMm: 0.4 });
  page.circle(x + 4.6, 21.1, 1.7, { widthMm: 0.3 });
  page.text('TAG', x + 9.4, 15.6, { sizePt: TYPE.tiny, colour: GREY });
  const fits = page.face(true).widthMm(run.run.id, TYPE.strong + 2) < TAG_WIDTH_MM - 12;
  const sizePt = fits ? TYPE.strong + 2 : TYPE.small;
  page.text(fitted(page, run.run.id, TAG_WIDTH_MM - 11, sizePt), x + 9.4, 21.4, { sizePt, bold: true });
  page.text(`size ${formatDash(run.hose.dash)}`, x + 9.4, 26.8, { sizePt: TYPE.body });
}

const NOT_TO_BUILD = 'Do not build a hose from this sheet.';

/** The foot of one page, drawn when the number of pages is known. */
export function drawFoot(page: Page, subject: Subject, pageNumber: number, pageCount: number): void {
  const of = fitted(page, subject.run.run.id, 44, TYPE.tiny);
  drawPaperFoot(page, subject.input, `${of}  ·  page ${pageNumber} of ${pageCount}`);
}
