import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt, capScrew } from '../../../shapes/bolt.ts';
import { frameAt } from '../../../shapes/frame.ts';
import { cylinder, lathe } from '../../../shapes/lathe.ts';
import { circleOutline, roundedRectangle } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { plate } from '../../../shapes/plate.ts';
import { box, boxOn } from '../../../shapes/roundedBox.ts';
import { bar, curveThrough, sweepOutline } from '../../../shapes/sweep.ts';
import { BORES_X } from './engine.ts';

export function intakeParts(): Part[] {
  return [plenum(), runners(), throttleBody(), fuelRail(), injectors()];
}

function plenum(): Part {
  const path: Vec3[] = Array.from({ length: 31 }, (_, k) => [385 + k * 12, -235, 572 - 0.02 * k]);
  const shape = (t: number) => {
    const end = Math.min(1, Math.min(t, 1 - t) * 11);
    const f = 0.72 + 0.28 * Math.sqrt(end * (2 - end));
    return roundedRectangle(92 * f, 88 * f, 34 * f, 8);
  };
  const body = sweepOutline(path, shape, [0, 0, 1]);
  const lip = box([380, -286, 566], [750, -184, 574], { corner: 20, edge: 2 });
  const screws = Array.from({ length: 9 }, (_, k) => capScrew(frameAt([400 + k * 41, -283, 574], [0, 0, 1]), 5));
  const neck = lathe(
    frameAt([620, -235, 610], [0, 0, 1]),
    [
      [-6, 38],
      [2, 36],
      [4, 34],
    ],
    36,
  );
  return part('intake-plenum', 'cast', body, lip, ...screws, neck);
}

function runners(): Part {
  const tubes = BORES_X.map((x) =>
    bar(
      curveThrough(
        [
          [x, -112, 507],
          [x, -135, 510],
          [x, -165, 524],
          [x, -188, 545],
          [x, -215, 562],
        ],
        6,
      ),
      (t) => 21 + 3 * t,
      26,
    ),
  );
  const flanges = BORES_X.map((x) =>
    plate(
      frameAt([x, -112, 507], [0, -1, 0], [0, 0, 1]),
      roundedRectangle(84, 50, 15),
      [circleOutline(19, 26), circleOutline(4, 12, [-33, 0]), circleOutline(4, 12, [33, 0])],
      9,
    ),
  );
  const nuts = BORES_X.flatMap((x) => [-33, 33].map((u) => bolt(frameAt([x + u, -121, 507], [0, -1, 0]), 7)));
  return part('intake-runners', 'cast', ...tubes, ...flanges, ...nuts);
}

function throttleBody(): Part {
  const at = frameAt([620, -235, 614], [0, 0, 1]);
  const body = lathe(
    at,
    [
      [0, 36],
      [3, 36],
      [5, 32],
      [26, 32],
      [28, 28],
    ],
    40,
  );
  const motor = boxOn(frameAt([575, -235, 628], [-1, 0, 0], [0, 0, 1]), [38, 26, 34], { corner: 8, edge: 4 });
  const spindle = cylinder(frameAt([650, -235, 628], [1, 0, 0]), 16, 8, 18);
  return part('throttle-body', 'machined', body, motor, spindle);
}

function fuelRail(): Part {
  const rail = bar(
    [
      [384, -165, 535],
      [384.5, -165, 535],
      [560, -165, 535],
      [745.5, -165, 535],
      [746, -165, 535],
    ],
    (t) => (t === 0 || t === 1 ? 10.5 : 11.5),
    28,
  );
  const cap = lathe(
    frameAt([744, -165, 535], [1, 0, 0]),
    [
      [0, 15],
      [14, 15],
      [16, 13],
    ],
    6,
  );
  const regulator = lathe(
    frameAt([700, -165, 545], [0, -0.2, 1]),
    [
      [0, 9],
      [4, 18],
      [14, 20],
      [18, 20],
      [30, 14],
      [36, 5],
      [46, 5],
    ],
    30,
  );
  const foot = [470, 665].map((x) => box([x - 8, -162, 515], [x + 8, -146, 530], { corner: 4, edge: 2 }));
  const nose = cylinder(frameAt([388, -165, 535], [-1, 0, 0]), 8, 14, 28);
  return part('fuel-rail', 'machined', rail, cap, regulator, nose, ...foot);
}

function injectors(): Part {
  return part(
    'fuel-injectors',
    'black',
    ...BORES_X.map((x) =>
      lathe(
        frameAt([x, -163, 528], [0, 0.62, -0.78]),
        [
          [0, 8],
          [6, 9],
          [9, 9],
          [9, 7],
          [18, 7],
          [20, 10],
          [30, 10],
          [32, 6],
          [40, 6],
        ],
        22,
      ),
    ),
    ...BORES_X.map((x) =>
      boxOn(frameAt([x, -157, 505], [0, -0.78, -0.62], [1, 0, 0]), [12, 14, 22], { corner: 3, edge: 1.5 }),
    ),
  );
}
