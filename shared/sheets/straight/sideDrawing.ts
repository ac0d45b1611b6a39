import type { Clock, Lay } from '../../document/lay/schema.ts';
import { SLEEVE_REACH_MM } from '../../document/lay/sleeveCut.ts';
import { outsideDiameterMm } from '../../document/parts/outsideDiameter.ts';
import type { EndLetter } from '../clock/clockFace.ts';
import { type SideOutlet, sideView } from '../clock/sideView.ts';
import type { LengthWriter } from '../format/index.ts';
import type { SheetRun } from '../input.ts';
import type { Page, Point } from '../layout/page.ts';
import { GREY, HAIR_MM, TYPE } from '../layout/style.ts';
import { drawBalloon, drawDimension, drawExtension } from './dimension.ts';
import { drawEnd, type EndPlace, isOutOfPaper, onPage } from './drawEnd.ts';
import { drawHose, drawSleeve, drawStation, type HosePlace, STATION_REACH_MM } from './drawHose.ts';
import { endProfile } from './endProfile.ts';
import { stations } from './stations.ts';

/** One side view of the straight hose, laid out but not yet drawn. */
export interface SideDrawing {
  readonly run: SheetRun;
  readonly lay: Lay;
  readonly perMm: number;
  readonly write: LengthWriter;
  /** which outlet lies in the paper, pointing down */
  readonly down: EndLetter;
  /** dimensions and numbered places, or the bare view */
  readonly dimensioned: boolean;
}

const LABEL_MM = 4;
/** mm from the cut length's dimension line to the foot of the view. */
const DIMENSION_ROOM_MM = 9;
/** mm from the hose's side to the middle of the numbers below it. */
const NUMBER_DROP_MM = 4.6;

/** How the outlets stand; a free clock draws both ends in the paper, down. */
function outlets(clock: Clock, down: EndLetter): Record<EndLetter, SideOutlet> {
  return sideView(clock.kind === 'angle' ? clock.deg : 0, down);
}

/**
 * mm below the axis of the cut length's dimension line: close under the numbers where both outlets hang clear of the
 * hose, below the outlets where one bends back under it; the overall line, 6 mm lower, always clears the ends.
 */
function cutDimensionAt(drawing: SideDrawing, endsBelowMm: number): number {
  const { run } = drawing;
  const underNumbers = bodyHalf(drawing) + NUMBER_DROP_MM + 6.4;
  const bendsBack = run.a.end.bendAngleDeg > 90 || run.b.end.bendAngleDeg > 90;
  return Math.max(underNumbers, bendsBack ? endsBelowMm + 3 : endsBelowMm - 3);
}

/** Half the height on paper of hose, sleeve, clamps and pass-throughs, mm. */
function bodyHalf({ run, lay, perMm }: SideDrawing): number {
  const outside = outsideDiameterMm(run.hose, run.sleeve) * perMm;
  return outside / 2 + Math.max(0, ...stations(run, lay).map((s) => STATION_REACH_MM[s.kind]));
}

/** Room above and below the hose's axis that the view takes on paper, mm. */
export function sideDrawingRoom(drawing: SideDrawing): { above: number; below: number } {
  const { run, lay, perMm, down } = drawing;
  const stand = outlets(lay.clock, down);
  const reach = (['A', 'B'] as const).map((letter) => {
    const end = letter === 'A' ? run.a.end : run.b.end;
    const drop = endProfile(end).seat.dropMm * perMm;
    const radius = (end.collarDiameterMm / 2) * perMm;
    const r = Math.max(radius, bodyHalf(drawing)) + 1;
    return { above: Math.max(r, stand[letter].up * drop + r), below: Math.max(r, -stand[letter].up * drop + r) };
  });
  const above = Math.max(...reach.map((r) => r.above)) + LABEL_MM;
  const ends = Math.max(...reach.map((r) => r.below));
  return { above, below: drawing.dimensioned ? cutDimensionAt(drawing, ends) + DIMENSION_ROOM_MM : ends + 1 };
}

/** Draws the view with shoulder A at (x, y). */
export function drawSide(page: Page, drawing: SideDrawing, x: number, y: number): void {
  const { run, lay, perMm, down } = drawing;
  const stand = outlets(lay.clock, down);
  const lengthMm = lay.cutLengthMm * perMm;
  const hose: HosePlace = {
    x,
    y,
    lengthMm,
    thickMm: run.hose.outsideDiameterMm * perMm,
    outsideMm: outsideDiameterMm(run.hose, run.sleeve) * perMm,
    perMm,
  };
  const a: EndPlace = { shoulder: [x, y], side: -1, perMm, outlet: stand.A };
  const b: EndPlace = { shoulder: [x + lengthMm, y], side: 1, perMm, outlet: stand.B };
  drawHose(page, hose, run.hose.cover.endsWith('braid'));
  drawEnd(page, run.a.end, a);
  drawEnd(page, run.b.end, b);
  if (run.sleeve) drawSleeve(page, hose, SLEEVE_REACH_MM);
  page.line(x - 3, y, x + lengthMm + 3, y, { widthMm: HAIR_MM, dashMm: [4, 0.8, 0.8, 0.8] });
  for (const station of stations(run, lay)) drawStation(page, hose, station);
  nameEnd(page, drawing, 'A', a);
  nameEnd(page, drawing, 'B', b);
  if (drawing.dimensioned) drawDimensions(page, drawing, hose, a, b);
}

function nameEnd(page: Page, drawing: SideDrawing, letter: EndLetter, place: EndPlace): void {
  const { run, lay } = drawing;
  const end = letter === 'A' ? run.a.end : run.b.end;
  const top = place.shoulder[1] - Math.max(end.collarDiameterMm * 0.5 * place.perMm, bodyHalf(drawing)) + 0.6;
  // Clear of a nut that comes back along the hose.
  const backMm = Math.max(0, -endProfile(end).seat.outMm) * place.perMm;
  const x = place.shoulder[0] - place.side * (1 + (backMm > 0 ? backMm + 2 : 0));
  const align = letter === 'A' ? 'left' : 'right';
  page.text(`END ${letter}`, x, top - 2, { sizePt: TYPE.small, bold: true, align });
  if (lay.clock.kind === 'free' || !isOutOfPaper(end, place)) return;
  const width = page.face(true).widthMm(`END ${letter}`, TYPE.small) + 1.8;
  const note = place.outlet.toReader > 0 ? 'outlet toward you' : 'outlet away from you';
  page.text(note, x - place.side * width, top - 2, { sizePt: TYPE.tiny, colour: GREY, align });
}

function drawDimensions(page: Page, drawing: SideDrawing, hose: HosePlace, a: EndPlace, b: EndPlace): void {
  const { run, lay } = drawing;
  const { below } = sideDrawingRoom(drawing);
  const bottom = hose.y + below;
  const [cutY, overallY] = [bottom - DIMENSION_ROOM_MM, bottom - 3];
  const end = hose.x + hose.lengthMm;
  for (const x of [hose.x, end]) drawExtension(page, x, hose.y + hose.thickMm / 2, cutY + 1);
  drawDimension(page, hose.x, end, cutY, `cut ${drawing.write.cut(lay.cutLengthMm)}`, true);
  const seats: Point[] = [onPage(endProfile(run.a.end).seat, a), onPage(endProfile(run.b.end).seat, b)];
  for (const [x, y] of seats) drawExtension(page, x, y, overallY + 1);
  drawDimension(page, seats[0]![0], seats[1]![0], overallY, `overall ${drawing.write.both(lay.overallLengthMm)}`);
  drawNumbers(page, drawing, hose);
}

/** The numbered places, their balloons pushed apart where places lie close. */
function drawNumbers(page: Page, drawing: SideDrawing, hose: HosePlace): void {
  const { run, lay, perMm } = drawing;
  const y = hose.y + bodyHalf(drawing) + NUMBER_DROP_MM;
  let least = Number.NEGATIVE_INFINITY;
  stations(run, lay).forEach((station, i) => {
    const at = hose.x + station.fromShoulderAMm * perMm;
    const balloon = Math.max(at, least);
    least = balloon + 4.8;
    page.path(
      [
        [at, hose.y + hose.outsideMm / 2 + STATION_REACH_MM[station.kind]],
        [balloon, y - 2.1],
      ],
      { widthMm: HAIR_MM },
    );
    drawBalloon(page, balloon, y, i + 1);
  });
}
