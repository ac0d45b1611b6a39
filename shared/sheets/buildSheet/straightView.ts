import { formatLengthBoth, formatNumber } from '../format/index.ts';
import { type Block, stack } from '../layout/block.ts';
import { GREY, TYPE } from '../layout/style.ts';
import { tableRows } from '../layout/table.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import { drawingScale } from '../straight/drawingScale.ts';
import { endProfile } from '../straight/endProfile.ts';
import { drawSide, type SideDrawing, sideDrawingRoom } from '../straight/sideDrawing.ts';
import { stations } from '../straight/stations.ts';
import type { LaidSubject } from './subject.ts';

/** mm of paper left free at each side of a view. */
const SIDE_ROOM_MM = 9;
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
    textBlock(paper, note, widthMm, { sizePt: TYPE.tiny, colour: GREY }),
    stationTable(subject),
  ]);
}

function seatSpan({ run, lay }: LaidSubject): { leftMm: number; rightMm: number } {
  const reach = (end: typeof run.a.end): number =>
    Math.max(endProfile(end).seat.outMm, end.bendToShoulderMm) + end.collarDiameterMm / 2;
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
function drawings({ run, lay }: LaidSubject, perMm: number): SideDrawing[] {
  const first: SideDrawing = { run, lay, perMm, down: 'A', dimensioned: true };
  return lay.clock.kind === 'angle' ? [{ ...first, down: 'B', dimensioned: false }, first] : [first];
}

function viewBlock(subject: LaidSubject, drawing: SideDrawing): Block {
  const { above, below } = sideDrawingRoom(drawing);
  const { leftMm, rightMm } = seatSpan(subject);
  return {
    heightMm: above + below,
    draw: (page, x, y) => {
      const spare = subject.widthMm - (leftMm + rightMm) * drawing.perMm;
      drawSide(page, drawing, x + spare / 2 + leftMm * drawing.perMm, y + above);
      if (subject.lay.clock.kind === 'angle')
        page.text(`END ${drawing.down} in the paper, pointing down`, x + subject.widthMm / 2, y + 3.4, {
          sizePt: TYPE.tiny,
          colour: GREY,
          align: 'middle',
        });
    },
  };
}

function stationTable({ paper, run, lay, widthMm }: LaidSubject): Block {
  const columns = [
    { title: '', widthMm: 8, bold: true },
    { title: 'mark along the hose', widthMm: widthMm - 8 - 64 },
    { title: 'from shoulder A (the cut at END A)', widthMm: 64, bold: true },
  ];
  const rows = stations(run, lay).map((s, i) => [`${i + 1}`, s.name, formatLengthBoth(s.fromShoulderAMm)]);
  const table = tableRows(paper, columns, rows);
  return stack([table.titles, ...table.rows]);
}
