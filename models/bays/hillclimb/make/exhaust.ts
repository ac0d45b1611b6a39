import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt, boltCircle } from '../../../shapes/bolt.ts';
import { frameAt } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { circleOutline, roundedRectangle } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { plate } from '../../../shapes/plate.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { bar, curveThrough, pipe } from '../../../shapes/sweep.ts';
import { BORES_X } from './engine.ts';

/** Where the four runners meet the collector: a two by two bundle heading rearward. */
const BUNDLE: readonly Vec3[] = [
  [742, 188, 530],
  [742, 152, 530],
  [742, 188, 570],
  [742, 152, 570],
];

function runner(i: number): Solid {
  const x = BORES_X[i] as number;
  const end = BUNDLE[i] as Vec3;
  const lift = end[2] > 550 ? 30 : -4;
  const path = curveThrough(
    [
      [x, 112, 507],
      [x + 1, 132, 508 + lift * 0.2],
      [x + (i === 3 ? 7 : 11), 0.35 * 132 + 0.65 * end[1], 511 + lift * 0.6],
      [x + (i === 3 ? 18 : 34), end[1] - 2, 516 + lift * 0.9],
      [x + (i === 3 ? 26 : 64), end[1], 0.6 * (518 + lift * 0.9) + 0.4 * end[2]],
      ...(i === 3 ? [] : [[0.5 * (x + 64) + 0.5 * 742, end[1], 0.15 * (518 + lift * 0.9) + 0.85 * end[2]] as Vec3]),
      [756, end[1], end[2]],
    ],
    7,
  );
  return bar(path, 19, 22);
}

function flange(x: number): Solid {
  const frame = frameAt([x, 112, 507], [0, 1, 0], [0, 0, 1]);
  const studs = [-32, 32].map((u) => circleOutline(4.2, 12, [u, 0]));
  return plate(frame, roundedRectangle(82, 52, 16), [circleOutline(17, 28), ...studs], 9);
}

export function manifold(): Part[] {
  const nuts = BORES_X.flatMap((x) => [-32, 32].map((u) => bolt(frameAt([x + u, 121, 507], [0, 1, 0]), 8)));
  const collectorPath = curveThrough(
    [
      [748, 170, 550],
      [775, 170, 550],
      [806, 171, 552],
      [838, 178, 556],
      [860, 198, 557],
      [869, 222, 557],
      [870, 236, 557],
    ],
    7,
  );
  const collector = pipe(collectorPath, (t) => 29 + 14 * Math.max(0, 1 - t * 2.2) ** 1.3, 2.5, 36);
  const inlet = frameAt([870, 230, 557], [0, 1, 0], [0, 0, 1]);
  const holes = [0, 90, 180, 270].map((deg) => {
    const a = ((deg + 45) * Math.PI) / 180;
    return circleOutline(4.6, 12, [38 * Math.cos(a), 38 * Math.sin(a)]);
  });
  const turbineFlange = plate(inlet, roundedRectangle(82, 82, 18), [circleOutline(26, 32), ...holes], 10);
  const flangeBolts = boltCircle(frameAt([870, 230, 557], [0, -1, 0], [0, 0, 1]), 38, 4, 8, 45);
  return [
    part('exhaust-manifold', 'rust', ...BORES_X.map((_, i) => runner(i)), ...BORES_X.map(flange), ...nuts),
    part('exhaust-collector', 'rust', collector, turbineFlange, flangeBolts),
  ];
}

export function wastegate(): Part[] {
  const valve = lathe(
    frameAt([812, 171, 528], [0, 0.25, -1]),
    [
      [-6, 20],
      [12, 20],
      [12, 30],
      [18, 30],
      [20, 24],
      [34, 24],
      [36, 34],
      [48, 36],
      [50, 40],
      [56, 40],
      [60, 36],
      [68, 22],
      [70, 0],
    ],
    36,
  );
  const screws = boltCircle(frameAt([812, 184.5, 474], [0, 0.25, -1]), 34, 6, 5);
  const outlet = curveThrough(
    [
      [826, 178, 502],
      [870, 186, 488],
      [930, 215, 462],
      [1010, 262, 452],
      [1085, 290, 468],
      [1120, 296, 482],
    ],
    6,
  );
  return [part('wastegate', 'steel', valve, screws), part('wastegate-pipe', 'rust', pipe(outlet, 16, 1.5, 24))];
}

export function downpipe(): Part {
  const path = curveThrough(
    [
      [914, 320, 505],
      [960, 320, 505],
      [1030, 316, 500],
      [1110, 300, 486],
      [1200, 276, 462],
      [1290, 262, 446],
      [1380, 258, 444],
      [1420, 258, 446],
    ],
    6,
  );
  const flangeRing = lathe(
    frameAt([914, 320, 505], [1, 0, 0]),
    [
      [0, 50],
      [2, 52],
      [9, 52],
      [10, 50],
      [10, 34],
      [0, 34],
    ],
    40,
    true,
  );
  const band = lathe(
    frameAt([1150, 290, 475], [0.96, -0.26, -0.2]),
    [
      [-9, 43],
      [-8, 47],
      [8, 47],
      [9, 43],
      [9, 38],
      [-9, 38],
    ],
    36,
    true,
  );
  const bolts = boltCircle(frameAt([924, 320, 505], [1, 0, 0]), 45, 5, 8);
  return part(
    'downpipe',
    'rust',
    pipe(path, (t) => 36 + 6 * Math.min(1, t * 4), 2, 36),
    flangeRing,
    band,
    bolts,
  );
}

export function exhaustParts(): Part[] {
  return [...manifold(), ...wastegate(), downpipe()];
}
