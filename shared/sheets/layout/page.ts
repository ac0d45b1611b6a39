import {
  appendBezierCurve,
  closePath,
  fill,
  fillAndStroke,
  lineTo,
  moveTo,
  type PDFOperator,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rgb,
  setDashPattern,
  setFillingRgbColor,
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingRgbColor,
  stroke,
} from '@cantoo/pdf-lib';
import { lengthOf } from '../../base/vec3.ts';
import type { Face } from './face.ts';
import { type Colour, FINE_MM, INK, lineHeightMm, MM_PER_POINT, TYPE } from './style.ts';

/** A point on the page: mm from its left edge, mm from its top edge downward. */
export type Point = readonly [number, number];

export interface Ink {
  /** colour of the line; null = none. Default ink */
  readonly line?: Colour | null;
  /** default fine */
  readonly widthMm?: number;
  /** lengths of dash and gap in mm; absent = solid */
  readonly dashMm?: readonly number[];
  /** colour of the inside; absent = none */
  readonly fill?: Colour | null;
  /** round ends and corners instead of square ones */
  readonly round?: boolean;
}

export interface TextLook {
  readonly sizePt?: number;
  readonly bold?: boolean;
  readonly colour?: Colour;
  /** what of the text stands at x; default left */
  readonly align?: 'left' | 'middle' | 'right';
}

/** How far a Bezier handle must reach for a quarter circle of radius 1; off by 0.03 % of the radius at most. */
const QUARTER_HANDLE = 0.5522847498;

/** Steps of a coordinate in a point: 35 nanometres on paper. */
const GRID_PER_POINT = 1e4;

/** Coordinates on a fine grid, so that hosts whose sines differ in the last bit still write the same bytes. */
function onGrid(points: number): number {
  return Math.round(points * GRID_PER_POINT) / GRID_PER_POINT;
}

/** A page drawn on in mm, y downward, at true scale: 1 mm here is 1 mm on paper printed without fitting. */
export class Page {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly #page: PDFPage;
  readonly #regular: Face;
  readonly #bold: Face;

  constructor(page: PDFPage, regular: Face, bold: Face) {
    this.#page = page;
    this.#regular = regular;
    this.#bold = bold;
    this.widthMm = page.getWidth() * MM_PER_POINT;
    this.heightMm = page.getHeight() * MM_PER_POINT;
  }

  /** A line through points; closed and filled if asked. */
  path(points: readonly Point[], ink: Ink = {}, closed = false): void {
    const ops = points.map((p, i) => (i === 0 ? moveTo : lineTo)(this.#x(p[0]), this.#y(p[1])));
    this.#paint(closed ? [...ops, closePath()] : ops, ink);
  }

  line(x1: number, y1: number, x2: number, y2: number, ink: Ink = {}): void {
    this.path(
      [
        [x1, y1],
        [x2, y2],
      ],
      ink,
    );
  }

  rectangle(x: number, y: number, widthMm: number, heightMm: number, ink: Ink = {}): void {
    const right = x + widthMm;
    const bottom = y + heightMm;
    this.path(
      [
        [x, y],
        [right, y],
        [right, bottom],
        [x, bottom],
      ],
      ink,
      true,
    );
  }

  circle(x: number, y: number, radiusMm: number, ink: Ink = {}): void {
    this.ellipse(x, y, [radiusMm, 0], radiusMm, ink);
  }

  /** An ellipse round (x, y): one half axis as a vector in mm, the length of the other, square to it. */
  ellipse(x: number, y: number, halfAxis: Point, otherMm: number, ink: Ink = {}): void {
    const reach = lengthOf(halfAxis[0], halfAxis[1]) || 1;
    const v: Point = [(-halfAxis[1] / reach) * otherMm, (halfAxis[0] / reach) * otherMm];
    const at = (s: number, t: number): [number, number] => [
      this.#x(x + halfAxis[0] * s + v[0] * t),
      this.#y(y + halfAxis[1] * s + v[1] * t),
    ];
    const k = QUARTER_HANDLE;
    const curve = (a: number[], b: number[], c: number[]) =>
      appendBezierCurve(...at(a[0]!, a[1]!), ...at(b[0]!, b[1]!), ...at(c[0]!, c[1]!));
    const ops = [
      moveTo(...at(1, 0)),
      curve([1, k], [k, 1], [0, 1]),
      curve([-k, 1], [-1, k], [-1, 0]),
      curve([-1, -k], [-k, -1], [0, -1]),
      curve([k, -1], [1, -k], [1, 0]),
      closePath(),
    ];
    this.#paint(ops, ink);
  }

  /** One line of text, its baseline at y. */
  text(text: string, x: number, y: number, look: TextLook = {}): void {
    const { sizePt = TYPE.body, colour = INK, align = 'left' } = look;
    const face = this.face(look.bold);
    const width = align === 'left' ? 0 : face.widthMm(text, sizePt);
    const left = align === 'right' ? x - width : align === 'middle' ? x - width / 2 : x;
    this.#page.drawText(face.shown(text), {
      x: this.#x(left),
      y: this.#y(y),
      size: sizePt,
      font: face.font,
      color: rgb(...colour),
    });
  }

  /** Text wrapped to a width, the top of its first line at y. Answers the height it took. */
  paragraph(text: string, x: number, y: number, widthMm: number, look: TextLook = {}): number {
    const sizePt = look.sizePt ?? TYPE.body;
    const lines = this.face(look.bold).wrap(text, sizePt, widthMm);
    const step = lineHeightMm(sizePt);
    const left = look.align === 'right' ? x + widthMm : look.align === 'middle' ? x + widthMm / 2 : x;
    lines.forEach((line, i) => {
      this.text(line, left, y + step * (i + 0.78), look);
    });
    return lines.length * step;
  }

  face(bold = false): Face {
    return bold ? this.#bold : this.#regular;
  }

  #x(mm: number): number {
    return onGrid(mm / MM_PER_POINT);
  }

  #y(mm: number): number {
    return onGrid((this.heightMm - mm) / MM_PER_POINT);
  }

  #paint(ops: readonly PDFOperator[], ink: Ink): void {
    const line = ink.line === undefined ? INK : ink.line;
    const inside = ink.fill ?? null;
    const end = line && inside ? fillAndStroke() : inside ? fill() : stroke();
    this.#page.pushOperators(
      pushGraphicsState(),
      ...(line ? [setStrokingRgbColor(...line), setLineWidth((ink.widthMm ?? FINE_MM) / MM_PER_POINT)] : []),
      ...(inside ? [setFillingRgbColor(...inside)] : []),
      ...(ink.round ? [setLineCap(1), setLineJoin(1)] : []),
      ...(ink.dashMm
        ? [
            setDashPattern(
              ink.dashMm.map((d) => d / MM_PER_POINT),
              0,
            ),
          ]
        : []),
      ...ops,
      end,
      popGraphicsState(),
    );
  }
}
