import { formatNumber } from '../format/index.ts';
import { type Block, beside, space, stack } from '../layout/block.ts';
import { GREY, TYPE } from '../layout/style.ts';
import { tableRows } from '../layout/table.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import { drawingScale } from '../straight/drawingScale.ts';
import { endProfile } from '../straight/endProfile.ts';
import { drawSide, type SideDrawing, sideDrawingRoom } from '../straight/sideDrawing.ts';
import { stations } from '../straight/stations.ts';
import type { LaidSubject } from './subject.ts';

/** mm of paper left free at each side of a view. */
const SIDE_ROOM_MM = 1.5;
/** mm of paper that both views together may take in height before they are drawn smaller. */
const HEIGHT_ROOM_MM = 84;

/** The hose as it lies straight on the bench, to scale, with every place that is marked on it. */
export function straightView(subject: LaidSubject): Block {
  const { paper, widthMm, lay } = subject;
  const divisor = chooseScale(subject);
  const views = drawings(subject, 1 / divisor);
  const note =
    `Scale 1:${formatNumber(divisor, Number.isInteger(divisor) ? 0 : 1)}. Lengths, bend angles, hose and collars to scale; ` +
    `width of tubes and nuts for the eye only. ${lay.clock.kind === 'angle' ? 'The clock card governs the angle.' : 'The clock is free: the bends are drawn down for the eye only.'}`;
  return stack([
    heading('Straight view', widthMm),
    ...views.map((view) => viewBlock(subject, view)),
    space(1),
    textBlock(paper, note, widthMm, { sizePt: TYPE.tiny, colour: GREY }),
    space(1.5),
    stationTable(subject),
  ]);
}

function seatSpan({ run, lay }: LaidSubject): { leftMm: number; rightMm: number } {
  const reach = (end: typeof run.a.end): number =>
    Math.max(end.bendToShoulderMm, ...endProfile(end).centre.map((p) => p.outMm)) + end.collarDiameterMm / 2;
  return { leftMm: reach(run.a.end), rightMm: lay.cutLengthMm + reach(run.b.end) };
}

function chooseScale(subject: LaidSubject): number {
  const { leftMm, rightMm } = seatSpan(subject);
  const byLength = drawingScale(leftMm + rightMm, subject.widthMm - 2 * SIDE_ROOM_MM);
  const tall = drawings(subject, 1).reduce((sum, d) => {
    const room = sideDrawingRoom(d);
    return sum + room.above + room.below;
  }, 0);
  return Math.max(byLength, drawingScale(tall, HEIGHT_ROOM_MM));
}

/** Two views where both ends are angled, each outlet in true shape in one of them; else one is enough. */
function drawings({ run, lay, write }: LaidSubject, perMm: number): SideDrawing[] {
  const first: SideDrawing = { run, lay, perMm, write, down: 'A', dimensioned: true };
  return lay.clock.kind === 'angle' ? [{ ...first, down: 'B', dimensioned: false }, first] : [first];
}

function viewBlock(subject: LaidSubject, drawing: SideDrawing): Block {
  const { above, below } = sideDrawingRoom(drawing);
  const { leftMm, rightMm } = seatSpan(subject);
  const captionMm = subject.lay.clock.kind === 'angle' ? 4.4 : 0;
  return {
    heightMm: captionMm + above + below,
    draw: (page, x, y) => {
      const spare = subject.widthMm - (leftMm + rightMm) * drawing.perMm;
      drawSide(page, drawing, x + spare / 2 + leftMm * drawing.perMm, y + captionMm + above);
      if (subject.lay.clock.kind === 'angle')
        page.text(`Turned so that the outlet of END ${drawing.down} points straight down`, x, y + 3.2, {
          sizePt: TYPE.small,
          bold: true,
        });
    },
  };
}

/** The marks in two columns, the first half at the left. */
function stationTable({ paper, run, lay, write, widthMm }: LaidSubject): Block {
  const half = (widthMm - 6) / 2;
  const columns = [
    { title: '', widthMm: 7, bold: true },
    { title: 'mark along the hose', widthMm: half - 7 - 38 },
    { title: 'from shoulder A', widthMm: 38, bold: true },
  ];
  const rows = stations(run, lay).map((s, i) => [`${i + 1}`, s.name, write.both(s.fromShoulderAMm)]);
  const split = Math.ceil(rows.length / 2);
  return beside(
    [rows.slice(0, split), rows.slice(split)].map((part, i) => {
      const table = tableRows(paper, columns, part);
      return { atMm: i * (half + 6), block: stack([table.titles, ...table.rows]) };
    }),
  );
}
