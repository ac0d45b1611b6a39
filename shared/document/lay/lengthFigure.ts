import { degreesToRadians } from '../../base/units.ts';
import { lengthOf } from '../../base/vec3.ts';
import type { End } from '../parts/schema.ts';
import type { LengthDatum } from './schema.ts';

type FigurePoint = readonly [x: number, y: number];
type FigureEnd = Pick<End, 'form' | 'bendAngleDeg'>;

/** What a shape of a figure stands for; papers and window choose the ink. */
export type FigureLook = 'hose' | 'metal' | 'nut' | 'axis' | 'extension' | 'dimension' | 'head';

/** One shape of a figure, in its own units: x to the right, y down. */
export type FigureShape =
  | {
      readonly kind: 'path';
      readonly look: FigureLook;
      readonly points: readonly FigurePoint[];
      readonly closed: boolean;
    }
  | { readonly kind: 'circle'; readonly look: FigureLook; readonly centre: FigurePoint; readonly radius: number };

/** Width and height of every figure. */
export const LENGTH_FIGURE = { width: 100, height: 33 } as const;

/** A place on an end, from its shoulder outward along the hose and off its axis, in figure units. */
interface Place {
  readonly out: number;
  readonly drop: number;
}

interface Sketch {
  readonly shapes: readonly FigureShape[];
  readonly datums: Partial<Record<LengthDatum, Place>>;
}

const AXIS_Y = 8;
const SHOULDER_X = 24;
const DIMENSION_Y = 30;
const HOSE_HALF = 3;
const SOCKET = { length: 9, half: 4.2 };
const TUBE_HALF = 1.8;
const NUT = { length: 8, half: 4 };

/**
 * A small drawing of one convention of length: a hose with its two ends by their form and bend, and the dimension from where to
 * where. To no scale: every length looks alike but for what it goes to. END A at the left, both outlets drawn down.
 */
export function lengthFigure(
  ends: { readonly a: FigureEnd; readonly b: FigureEnd },
  datum: { readonly a: LengthDatum; readonly b: LengthDatum },
): FigureShape[] {
  const toA = ({ out, drop }: Place): FigurePoint => [SHOULDER_X - out, AXIS_Y + drop];
  const toB = ({ out, drop }: Place): FigurePoint => [LENGTH_FIGURE.width - SHOULDER_X + out, AXIS_Y + drop];
  const a = sketchOf(ends.a, toA);
  const b = sketchOf(ends.b, toB);
  const mouths = [toA({ out: -SOCKET.length, drop: 0 })[0], toB({ out: -SOCKET.length, drop: 0 })[0]] as const;
  const hose = box(mouths[0], AXIS_Y - HOSE_HALF, mouths[1], AXIS_Y + HOSE_HALF, 'hose');
  return [
    hose,
    ...a.shapes,
    ...b.shapes,
    ...dimension(toA(a.datums[datum.a] ?? SHOULDER), toB(b.datums[datum.b] ?? SHOULDER)),
  ];
}

const SHOULDER: Place = { out: 0, drop: 0 };

function sketchOf(end: FigureEnd, at: (place: Place) => FigurePoint): Sketch {
  const socket = strip([{ out: -SOCKET.length, drop: 0 }, SHOULDER], SOCKET.half, 'metal', at);
  const common = { shoulder: SHOULDER, mouth: { out: -SOCKET.length, drop: 0 } };
  const body = end.form === 'banjo' ? banjo(at) : end.bendAngleDeg === 0 ? straight(end, at) : bent(end, at);
  return { shapes: [...body.shapes, socket], datums: { ...common, ...body.datums } };
}

function banjo(at: (place: Place) => FigurePoint): Sketch {
  const eye: Place = { out: 14, drop: 0 };
  return {
    shapes: [
      strip([SHOULDER, { out: 9, drop: 0 }], TUBE_HALF, 'metal', at),
      { kind: 'circle', look: 'metal', centre: at(eye), radius: 6 },
      { kind: 'circle', look: 'hose', centre: at(eye), radius: 2.6 },
    ],
    datums: { eye, seat: eye, centreline: eye },
  };
}

function straight(end: FigureEnd, at: (place: Place) => FigurePoint): Sketch {
  const seat: Place = { out: 15, drop: 0 };
  const nutEnd: Place = { out: 19, drop: 0 };
  const tube = strip([SHOULDER, seat], TUBE_HALF, 'metal', at);
  const datums = { seat, flare: seat, 'nut-reach': nutEnd };
  const form = end.form ?? 'nut';
  if (form !== 'nut') return { shapes: [tube, headOf(form, SHOULDER, seat, at)], datums };
  const nut = strip([{ out: 7, drop: 0 }, nutEnd], NUT.half, 'nut', at);
  // The nipple's flare, as it lies within the nut.
  const flare: FigureShape = {
    kind: 'path',
    look: 'dimension',
    points: [
      at({ out: 12.5, drop: -TUBE_HALF }),
      at({ out: 15, drop: -3.2 }),
      at({ out: 15, drop: 3.2 }),
      at({ out: 12.5, drop: TUBE_HALF }),
    ],
    closed: false,
  };
  return { shapes: [tube, nut, flare], datums };
}

function bent(end: FigureEnd, at: (place: Place) => FigurePoint): Sketch {
  const middle = bentLine(end.bendAngleDeg);
  const seat = middle[middle.length - 1] as Place;
  const before = middle[middle.length - 2] as Place;
  return {
    shapes: [
      band(middle, TUBE_HALF, 'metal', at),
      headOf(end.form ?? 'nut', before, seat, at),
      { kind: 'path', look: 'axis', points: [at(before), at(seat)], closed: false },
    ],
    datums: { centreline: seat, seat, eye: seat },
  };
}

/** The middle of a bent end from shoulder to seat. */
function bentLine(bendAngleDeg: number): Place[] {
  if (bendAngleDeg === 180) {
    const round = Array.from({ length: HALF_TURN_STEPS + 1 }, (_, i): Place => {
      const angle = (Math.PI * i) / HALF_TURN_STEPS;
      return { out: 10 + 6 * Math.sin(angle), drop: 6 - 6 * Math.cos(angle) };
    });
    return [SHOULDER, ...round, { out: 2, drop: 12 }];
  }
  const angle = degreesToRadians(bendAngleDeg);
  const leg = bendAngleDeg <= 100 ? 12 : 16;
  const bend: Place = { out: 10, drop: 0 };
  return [SHOULDER, bend, { out: bend.out + leg * Math.cos(angle), drop: leg * Math.sin(angle) }];
}

/** What joins the port, on the last leg of the end: nut, thread, flange or barb. */
function headOf(
  form: NonNullable<End['form']>,
  from: Place,
  seat: Place,
  at: (place: Place) => FigurePoint,
): FigureShape {
  const size = {
    nut: NUT,
    male: { length: 8, half: 3 },
    flange: { length: 2.6, half: 6 },
    barb: { length: 8, half: 2.6 },
    banjo: NUT,
  };
  const { length, half } = size[form];
  const long = lengthOf(seat.out - from.out, seat.drop - from.drop);
  const share = Math.min(1, length / long);
  const base: Place = {
    out: seat.out + (from.out - seat.out) * share,
    drop: seat.drop + (from.drop - seat.drop) * share,
  };
  return strip([base, seat], half, form === 'nut' ? 'nut' : 'metal', at);
}

function dimension(from: FigurePoint, to: FigurePoint): FigureShape[] {
  const head = 3;
  const heads = (
    [
      [from, 1],
      [to, -1],
    ] as const
  ).map(
    ([[x], way]): FigureShape => ({
      kind: 'path',
      look: 'head',
      points: [
        [x, DIMENSION_Y],
        [x + way * head, DIMENSION_Y - 1.1],
        [x + way * head, DIMENSION_Y + 1.1],
      ],
      closed: true,
    }),
  );
  return [
    ...[from, to].map(
      ([x, y]): FigureShape => ({
        kind: 'path',
        look: 'extension',
        points: [
          [x, Math.max(y, AXIS_Y - SOCKET.half)],
          [x, DIMENSION_Y + 1.5],
        ],
        closed: false,
      }),
    ),
    {
      kind: 'path',
      look: 'dimension',
      points: [
        [from[0], DIMENSION_Y],
        [to[0], DIMENSION_Y],
      ],
      closed: false,
    },
    ...heads,
  ];
}

const HALF_TURN_STEPS = 10;

/** A band along a line, half as wide each side, its corners mitred. */
function band(line: readonly Place[], half: number, look: FigureLook, at: (place: Place) => FigurePoint): FigureShape {
  const normals = line.slice(1).map((to, i): Place => {
    const from = line[i] as Place;
    const long = lengthOf(to.out - from.out, to.drop - from.drop);
    return { out: -(to.drop - from.drop) / long, drop: (to.out - from.out) / long };
  });
  const side = (way: 1 | -1): FigurePoint[] =>
    line.map((place, i) => {
      const before = normals[Math.max(0, i - 1)] as Place;
      const after = normals[Math.min(normals.length - 1, i)] as Place;
      const sum: Place = { out: before.out + after.out, drop: before.drop + after.drop };
      const reach = (way * half * 2) / (sum.out ** 2 + sum.drop ** 2);
      return at({ out: place.out + sum.out * reach, drop: place.drop + sum.drop * reach });
    });
  return { kind: 'path', look, points: [...side(1), ...side(-1).reverse()], closed: true };
}

/** A straight band between two places, half as wide each side. */
function strip(
  [from, to]: readonly [Place, Place],
  half: number,
  look: FigureLook,
  at: (place: Place) => FigurePoint,
): FigureShape {
  const long = lengthOf(to.out - from.out, to.drop - from.drop);
  const across: Place = { out: (-(to.drop - from.drop) / long) * half, drop: ((to.out - from.out) / long) * half };
  const beside = (place: Place, side: 1 | -1): FigurePoint =>
    at({ out: place.out + side * across.out, drop: place.drop + side * across.drop });
  return {
    kind: 'path',
    look,
    points: [beside(from, 1), beside(to, 1), beside(to, -1), beside(from, -1)],
    closed: true,
  };
}

function box(left: number, top: number, right: number, bottom: number, look: FigureLook): FigureShape {
  return {
    kind: 'path',
    look,
    points: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    closed: true,
  };
}
