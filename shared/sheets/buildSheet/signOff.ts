import { clampedEnds } from '../../document/assembly/hoseClampSteps.ts';
import type { End } from '../../document/parts/schema.ts';
import { type SystemTest, systemTest } from '../../document/proof/systemTest.ts';
import { type Block, stack } from '../layout/block.ts';
import type { Page } from '../layout/page.ts';
import { GREY, HAIR_MM, TYPE } from '../layout/style.ts';
import { heading } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

const ROW_MM = 7.2;

/** What is measured of a joint. */
const MEASURED: Readonly<Record<End['joint'], string>> = {
  crimp: 'crimp, three places on the flats',
  'screw-together': 'gap at the socket',
  'push-on': 'gap at the socket',
  clamped: 'hose clamps, and hose beyond them',
};

/** The record of the test of a whole system. */
function recordOf({ system, pressure }: SystemTest): string[] {
  return [`The ${system} at ${pressure}: from, to`, 'Pressure lost; gauge', 'Tested by, date'];
}

/** What the bench fills in by hand: measured values of cut, ends, clock and proof, and who did it. */
export function signOff(subject: LaidSubject): Block {
  const { run, lay, input, widthMm } = subject;
  const test = systemTest(run.run.service, input.project.vehicle);
  const rows: string[][] = [
    ['Cut length, measured', 'Hose batch or roll', 'Clean and flushed'],
    ['END A: hose in', `END A: ${MEASURED[run.a.end.joint]}`, 'END A: push-out mark still at the mouth'],
    ['END B: hose in', `END B: ${MEASURED[run.b.end.joint]}`, 'END B: push-out mark still at the mouth'],
    [
      lay.clock.kind === 'angle' ? 'Clock, measured' : 'Clock: free',
      ...(clampedEnds(run).length > 0 ? [] : ['Proof: medium, pressure, hold', 'Leak, or end moved: yes / no']),
    ],
    ...(test === undefined ? [] : [recordOf(test)]),
    ['Assembled by, date', 'Tested by, date', 'Fitted by, date'],
  ];
  return stack([heading('Measured at the bench, and signed', widthMm), fields(rows, widthMm)]);
}

function fields(rows: readonly (readonly string[])[], widthMm: number): Block {
  return {
    heightMm: rows.length * ROW_MM + 1,
    draw: (page, x, y) => {
      rows.forEach((row, r) => {
        row.forEach((name, c) => {
          field(page, name, x + (widthMm / row.length) * c, y + r * ROW_MM, widthMm / row.length - 3);
        });
      });
    },
  };
}

function field(page: Page, name: string, x: number, y: number, widthMm: number): void {
  page.text(name, x, y + 2.1, { sizePt: TYPE.tiny - 0.6 });
  page.line(x, y + ROW_MM, x + widthMm, y + ROW_MM, { widthMm: HAIR_MM * 1.5, line: GREY });
}
