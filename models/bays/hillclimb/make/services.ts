import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt } from '../../../shapes/bolt.ts';
import { frameAt } from '../../../shapes/frame.ts';
import { lathe, quarterRound } from '../../../shapes/lathe.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { box } from '../../../shapes/roundedBox.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { bar, bentPath, curveThrough } from '../../../shapes/sweep.ts';

export function serviceParts(): Part[] {
  return [fuelPump(), fuelFilter(), fuelBrackets(), fuelJumper(), battery(), loom(), loomClips(), coilLeads()];
}

function fuelPump(): Part {
  const at = frameAt([-240, -360, 240], [1, 0, 0]);
  const body = lathe(
    at,
    [
      [0, 14],
      [2, 20],
      [10, 22],
      [112, 22],
      [118, 20],
      [124, 14],
      [124, 8],
      [140, 8],
      [141, 6],
    ],
    34,
  );
  const lugs = [
    [-10, 0],
    [10, 0],
  ].map(([y]) => bolt(frameAt([-242, -360 + (y as number), 240], [-1, 0, 0]), 4));
  return part('fuel-pump', 'black', body, ...lugs);
}

function fuelFilter(): Part {
  const at = frameAt([-304, -330, 120], [1, 0, 0]);
  const body = lathe(
    at,
    [
      [-16, 6],
      [-16, 9],
      [0, 9],
      [0, 16],
      [4, 21],
      [10, 22],
      [16, 22],
      [17, 23.5],
      [26, 23.5],
      [27, 22],
      [76, 22],
      [82, 20],
      [88, 16],
      [96, 13],
      [96, 10],
    ],
    36,
  );
  return part('fuel-filter', 'machined', body);
}

function fuelBrackets(): Part {
  const filterBand = lathe(
    frameAt([-248, -330, 120], [1, 0, 0]),
    [
      [-9, 22.2],
      [-9, 24.5],
      [9, 24.5],
      [9, 22.2],
    ],
    36,
  );
  const foot = box([-270, -360, 90], [-226, -300, 98], { corner: 10, edge: 2 });
  const pumpBand = lathe(
    frameAt([-180, -360, 240], [1, 0, 0]),
    [
      [-9, 22.2],
      [-9, 24.5],
      [9, 24.5],
      [9, 22.2],
    ],
    34,
  );
  const pumpPost = box([-188, -367, 92], [-172, -353, 220], { corner: 4, edge: 2 });
  return part('fuel-brackets', 'steel', filterBand, foot, pumpBand, pumpPost);
}

/** The made-up jumper from the pump round to the filter, part of the bay, not a run. */
function fuelJumper(): Part {
  const path = bentPath(
    [
      [-100, -360, 240],
      [-62, -360, 240],
      [-62, -408, 178],
      [-290, -412, 178],
      [-342, -372, 148],
      [-342, -330, 120],
      [-318, -330, 120],
    ],
    22,
    10,
  );
  return part('fuel-jumper', 'wire', bar(path, 5.5, 16));
}

function battery(): Part {
  const body = box([900, -290, 105], [1060, -165, 250], { corner: 5, edge: 3 });
  const lid = box([898, -292, 246], [1062, -163, 264], { corner: 6, edge: 4 });
  const posts = [930, 1030].map((x) =>
    lathe(
      frameAt([x, -190, 262], [0, 0, 1]),
      [
        [0, 12],
        [4, 12],
        [5, 9],
        [20, 8.5],
        [21, 7],
      ],
      22,
    ),
  );
  const tray = box([892, -298, 96], [1068, -157, 106], { corner: 8, edge: 3 });
  const strap = [930, 1030].map((x) => box([x - 7, -294, 262], [x + 7, -205, 268], { corner: 2.5, edge: 1.5 }));
  return part('battery', 'black', body, lid, tray, ...posts, ...strap);
}

const TRUNK: readonly Vec3[] = [
  [-60, -60, 130],
  [0, -60, 130],
  [60, -80, 118],
  [140, -150, 100],
  [260, -185, 98],
  [480, -190, 100],
  [700, -190, 104],
  [840, -205, 130],
  [870, -200, 230],
  [858, -150, 420],
  [840, -60, 560],
  [826, -20, 612],
];

/** The trunk of the wiring loom: a taped bundle, lumpy where the strands lie over each other. */
function loom(): Part {
  const path = curveThrough(TRUNK, 12);
  const trunk = bar(path, (t) => 12.5 + 0.7 * Math.sin(t * 160) + 0.4 * Math.sin(t * 371), 16);
  const toBattery = bar(
    curveThrough(
      [
        [700, -190, 104],
        [800, -230, 112],
        [872, -215, 220],
        [912, -185, 292],
        [930, -190, 284],
      ],
      7,
    ),
    7,
    12,
  );
  const toAlternator = bar(
    curveThrough(
      [
        [480, -190, 100],
        [520, -232, 170],
        [528, -246, 270],
        [490, -244, 350],
        [424, -205, 392],
      ],
      7,
    ),
    6,
    12,
  );
  return part('wiring-loom', 'wire', trunk, toBattery, toAlternator);
}

function loomClips(): Part {
  const spots: readonly (readonly [Vec3, Vec3])[] = [
    [
      [260, -185, 98],
      [1, -0.02, 0],
    ],
    [
      [480, -190, 100],
      [1, 0, 0],
    ],
    [
      [700, -190, 104],
      [1, -0.03, 0.05],
    ],
  ];
  const clips: Solid[] = spots.flatMap(([p, axis]) => [
    lathe(
      frameAt(p, axis),
      [
        [-6, 13],
        [-6, 16],
        [6, 16],
        [6, 13],
      ],
      26,
    ),
    box([p[0] - 6, p[1] + 10, p[2] - 3], [p[0] + 6, p[1] + 62, p[2] + 1], { corner: 2, edge: 1 }),
  ]);
  return part('loom-clips', 'steel', ...clips);
}

function coilLeads(): Part {
  const leads = [425, 520, 615, 710].map((x) =>
    bar(
      curveThrough(
        [
          [826, -20, 612],
          [800, -8, 640],
          [x + 40, 6, 640],
          [x + 8, 2, 632],
          [x, 0, 622],
        ],
        8,
      ),
      3.2,
      8,
    ),
  );
  const plugs = [425, 520, 615, 710].map((x) =>
    lathe(frameAt([x, 0, 620], [0, 0, 1]), [[0, 8], [8, 8], ...quarterRound(8, 8, 12, 4), [12, 0]], 16),
  );
  return part('coil-leads', 'wire', ...leads, ...plugs);
}
