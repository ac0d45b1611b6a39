import { lengthOf } from '../../base/vec3.ts';
import type { End } from '../../document/parts/schema.ts';
import type { SideOutlet } from '../clock/sideView.ts';
import type { Page, Point } from '../layout/page.ts';
import { FINE_MM, HAIR_MM, INK, OUTLINE_MM, WASH, WHITE } from '../layout/style.ts';
import { endProfile, type ProfilePoint } from './endProfile.ts';

/** Where and how large an end is drawn in a side view. */
export interface EndPlace {
  /** the shoulder on the page */
  readonly shoulder: Point;
  /** -1 = the end lies to the left of its shoulder (END A), 1 = to the right */
  readonly side: -1 | 1;
  /** paper mm per mm */
  readonly perMm: number;
  readonly outlet: SideOutlet;
}

/** How far out of the paper an outlet must stand, as a sine, before it is marked as coming or going. */
const OUT_OF_PAPER = 0.2;
const TUBE_SHARE = 0.62;
const NUT_SHARE = 0.42;

/** Puts a point of an end's own plane on the page, seen from the side. */
export function onPage(point: ProfilePoint, place: EndPlace): Point {
  const { shoulder, side, perMm, outlet } = place;
  return [shoulder[0] + side * point.outMm * perMm, shoulder[1] - outlet.up * point.dropMm * perMm];
}

/**
 * An end seen square to the hose: collar, tube and nut as the outlet stands, foreshortened where it leaves the paper.
 * Lengths, angles and collar are the part's own; width of tube and nut are for the eye (the tables do not give them).
 */
export function drawEnd(page: Page, end: End, place: EndPlace): void {
  const profile = endProfile(end);
  const tubeMm = end.collarDiameterMm * TUBE_SHARE * place.perMm;
  const middle = profile.centre.map((p) => onPage(p, place));
  const away = profile.facing.dropMm * place.outlet.toReader < -OUT_OF_PAPER;
  if (away) drawNut(page, end, place);
  drawTube(page, middle, tubeMm, away);
  if (away) crossAt(page, onPage(profile.seat, place), tubeMm * 0.32);
  else drawNut(page, end, place);
  drawCollar(page, end, place);
}

/** Does this outlet come at the reader or go from him, enough to be said in words? */
export function isOutOfPaper(end: End, place: Pick<EndPlace, 'outlet'>): boolean {
  return Math.abs(endProfile(end).facing.dropMm * place.outlet.toReader) > OUT_OF_PAPER;
}

/** The tube as a band with outlines; its end is round where the reader looks at the back of its bend. */
function drawTube(page: Page, points: readonly Point[], widthMm: number, round: boolean): void {
  page.path(points, { widthMm: widthMm + OUTLINE_MM, round });
  page.path(points, { widthMm: widthMm - OUTLINE_MM, line: WHITE, round });
}

function drawCollar(page: Page, end: End, { shoulder, side, perMm }: EndPlace): void {
  const [x, y] = shoulder;
  const lengthMm = end.shoulderToMouthMm * perMm;
  const tallMm = end.collarDiameterMm * perMm;
  const left = side === -1 ? x : x - lengthMm;
  page.rectangle(left, y - tallMm / 2, lengthMm, tallMm, { widthMm: OUTLINE_MM, fill: WASH });
  for (let i = 1; i <= 3; i++) {
    const at = left + (lengthMm * i) / 4;
    page.line(at, y - tallMm / 2, at, y + tallMm / 2, { widthMm: FINE_MM });
  }
}

function drawNut(page: Page, end: End, place: EndPlace): void {
  const { facing, seat } = endProfile(end);
  const radiusMm = (end.collarDiameterMm / 2) * place.perMm;
  const lengthMm = Math.min(end.collarDiameterMm * 0.8, (end.seatToBendMm + end.bendToShoulderMm) * NUT_SHARE);
  const baseAt: ProfilePoint = {
    outMm: seat.outMm - facing.outMm * lengthMm,
    dropMm: seat.dropMm - facing.dropMm * lengthMm,
  };
  const base = onPage(baseAt, place);
  const mouth = onPage(seat, place);
  const towards = facing.dropMm * place.outlet.toReader;
  // The nut's faces are discs square to the outlet: ellipses as deep as the outlet stands out of the paper.
  const direction = unitOnPage(facing, place);
  const half: Point = [direction[0] * radiusMm * Math.abs(towards), direction[1] * radiusMm * Math.abs(towards)];
  const [hidden, shown] = towards > 0 ? [base, mouth] : [mouth, base];
  disc(page, hidden, half, radiusMm, direction);
  band(page, base, mouth, radiusMm, direction);
  disc(page, shown, half, radiusMm, direction);
  if (isFlat(half)) disc(page, hidden, half, radiusMm, direction);
  if (towards > OUT_OF_PAPER) {
    page.ellipse(mouth[0], mouth[1], [half[0] * 0.5, half[1] * 0.5], radiusMm * 0.5, { widthMm: FINE_MM });
    page.circle(mouth[0], mouth[1], 0.45, { line: null, fill: INK });
  }
}

function unitOnPage(facing: ProfilePoint, place: EndPlace): Point {
  const x = place.side * facing.outMm;
  const y = -place.outlet.up * facing.dropMm;
  const size = lengthOf(x, y);
  return size > 0 ? [x / size, y / size] : [0, 1];
}

/** Is a nut's face seen edge on? Thinner than a hair line on paper it is a line. */
function isFlat(half: Point): boolean {
  return lengthOf(half[0], half[1]) < HAIR_MM / 2;
}

function disc(page: Page, [x, y]: Point, half: Point, radiusMm: number, direction: Point): void {
  if (isFlat(half)) {
    const across: Point = [-direction[1] * radiusMm, direction[0] * radiusMm];
    page.line(x - across[0], y - across[1], x + across[0], y + across[1], { widthMm: OUTLINE_MM });
  } else page.ellipse(x, y, half, radiusMm, { widthMm: OUTLINE_MM, fill: WHITE });
}

function band(page: Page, a: Point, b: Point, radiusMm: number, direction: Point): void {
  const across: Point = [-direction[1] * radiusMm, direction[0] * radiusMm];
  const corner = (p: Point, s: number): Point => [p[0] + across[0] * s, p[1] + across[1] * s];
  page.path([corner(a, 1), corner(b, 1), corner(b, -1), corner(a, -1)], { line: null, fill: WHITE }, true);
  for (const s of [-1, -0.33, 0.33, 1]) {
    const widthMm = Math.abs(s) === 1 ? OUTLINE_MM : FINE_MM;
    page.line(...corner(a, s), ...corner(b, s), { widthMm });
  }
}

function crossAt(page: Page, [x, y]: Point, radiusMm: number): void {
  page.line(x - radiusMm, y - radiusMm, x + radiusMm, y + radiusMm, { widthMm: FINE_MM * 1.5 });
  page.line(x - radiusMm, y + radiusMm, x + radiusMm, y - radiusMm, { widthMm: FINE_MM * 1.5 });
}
