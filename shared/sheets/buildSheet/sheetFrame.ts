import { formatDash, formatPressure, formatTemperature } from '../format/index.ts';
import type { Frame } from '../layout/flow.ts';
import type { Page } from '../layout/page.ts';
import { FINE_MM, GREY, INK, MARGIN_MM, TYPE, WHITE } from '../layout/style.ts';
import type { Subject } from './subject.ts';

const TAG_WIDTH_MM = 52;

/** The head that every page of a hose's sheet carries, and the room it leaves. */
export function sheetFrame(subject: Subject): Frame {
  const example = subject.input.project.exampleData;
  return {
    topMm: example ? 41 : 34.5,
    footMm: 17,
    draw: (page) => {
      drawTitle(page, subject);
      drawTag(page, subject);
      if (example) drawExampleMark(page, subject.widthMm);
    },
  };
}

function drawTitle(page: Page, { input, run, number }: Subject): void {
  const x = MARGIN_MM;
  page.text('BUILD SHEET', x, 14.4, { sizePt: TYPE.small, bold: true });
  const room = page.widthMm - 2 * MARGIN_MM - TAG_WIDTH_MM - 6;
  const name = page.face(true).wrap(run.run.name, TYPE.head, room);
  page.text(name.length > 1 ? `${name[0]} …` : run.run.name, x, 21.8, { sizePt: TYPE.head, bold: true });
  const { service } = run.run;
  page.text(
    `${input.project.name}  ·  hose ${number} of ${input.runs.length}  ·  ${run.a.port.name} to ${run.b.port.name}`,
    x,
    26.6,
    { sizePt: TYPE.small },
  );
  page.text(
    `${words(service.purpose)}, ${words(service.fluid)}, ${formatPressure(service.pressureKpa, 'up')}, ${formatTemperature(service.temperatureC, 'up')}`,
    x,
    30.4,
    { sizePt: TYPE.small, colour: GREY },
  );
}

function words(id: string): string {
  return id.replaceAll('-', ' ');
}

function drawTag(page: Page, { run }: Subject): void {
  const x = page.widthMm - MARGIN_MM - TAG_WIDTH_MM;
  page.rectangle(x, 11.6, TAG_WIDTH_MM, 19, { widthMm: 0.4 });
  page.circle(x + 4.6, 21.1, 1.7, { widthMm: 0.3 });
  page.text('TAG', x + 9.4, 15.6, { sizePt: TYPE.tiny, colour: GREY });
  const fits = page.face(true).widthMm(run.run.id, TYPE.strong + 2) < TAG_WIDTH_MM - 12;
  page.text(run.run.id, x + 9.4, 21.4, { sizePt: fits ? TYPE.strong + 2 : TYPE.small, bold: true });
  page.text(`size ${formatDash(run.hose.dash)}`, x + 9.4, 26.8, { sizePt: TYPE.body });
}

function drawExampleMark(page: Page, widthMm: number): void {
  page.rectangle(MARGIN_MM, 33.4, widthMm, 5, { line: null, fill: INK });
  page.text('EXAMPLE DATA: invented for learning. Do not build a hose from this sheet.', MARGIN_MM + 2.4, 36.9, {
    sizePt: TYPE.small,
    bold: true,
    colour: WHITE,
  });
}

/** The foot of one page, drawn when the number of pages is known. */
export function drawFoot(page: Page, subject: Subject, pageNumber: number, pageCount: number): void {
  const { report, printedOn } = subject.input;
  const y = page.heightMm - 13.4;
  page.line(MARGIN_MM, y, page.widthMm - MARGIN_MM, y, { widthMm: FINE_MM });
  const look = { sizePt: TYPE.tiny };
  page.text(
    'Hosewright advises; it never certifies a hose. Parts’ makers, local codes and licensed practice decide.',
    MARGIN_MM,
    y + 3.4,
    look,
  );
  page.text(
    `Printed ${printedOn}  ·  input ${report.project.inputHash.slice(0, 16)}  ·  solver ${report.solverVersion}, seed ${report.seed}`,
    MARGIN_MM,
    y + 6.6,
    { ...look, colour: GREY },
  );
  page.text(`${subject.run.run.id}  ·  page ${pageNumber} of ${pageCount}`, page.widthMm - MARGIN_MM, y + 3.4, {
    ...look,
    align: 'right',
  });
}
