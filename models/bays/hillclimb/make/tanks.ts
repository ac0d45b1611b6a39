import { boltCircle } from '../../../shapes/bolt.ts';
import { frameAt, moved } from '../../../shapes/frame.ts';
import { cylinder, lathe, quarterRound } from '../../../shapes/lathe.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { box } from '../../../shapes/roundedBox.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { portById, TANK } from './ports.ts';
import { bossOf } from './unions.ts';

const bosses = (...ids: string[]): Solid[] => ids.map((id) => bossOf(portById(id)));

/** A clamping band with its screw lug, round a vertical tank. */
function band(x: number, y: number, z: number, radius: number, lugDeg: number): Solid[] {
  const at = frameAt([x, y, z], [0, 0, 1], [1, 0, 0]);
  const a = (lugDeg * Math.PI) / 180;
  const lug = moved(at, -8, radius * Math.sin(a), radius * Math.cos(a));
  return [
    lathe(
      at,
      [
        [-11, radius - 0.5],
        [-10, radius + 2],
        [10, radius + 2],
        [11, radius - 0.5],
      ],
      44,
    ),
    cylinder(lug, 16, 6, 16),
  ];
}

export function tankParts(): Part[] {
  return [drySumpTank(), tankBrackets(), catchTank(), swirlPot()];
}

function drySumpTank(): Part {
  const [x, y] = TANK;
  const at = frameAt([x, y, 130], [0, 0, 1], [1, 0, 0]);
  const body = lathe(
    at,
    [
      [-24, 0],
      [-24, 24],
      [-20, 30],
      [24, 72],
      [30, 75],
      [300, 75],
      [301, 78],
      [310, 78],
      [311, 75],
      [428, 75],
      ...quarterRound(428, 75, 450, 46),
      [452, 30],
      [456, 30],
      [456, 0],
    ],
    56,
  );
  const filler = lathe(
    frameAt([x - 34, y + 30, 572], [0, 0, 1]),
    [
      [-10, 22],
      [4, 22],
      [4, 27],
      [18, 27],
      [21, 24],
      [21, 0],
    ],
    30,
  );
  const clampBolts = boltCircle(frameAt([x, y, 441], [0, 0, 1], [1, 0, 0]), 77, 8, 4, 20);
  const sight = lathe(
    frameAt([x, y + 74, 330], [0, 1, 0]),
    [
      [0, 16],
      [6, 16],
      [7, 14],
      [7, 9],
      [4, 8],
      [4, 0],
    ],
    26,
  );
  return part(
    'dry-sump-tank',
    'machined',
    body,
    filler,
    clampBolts,
    sight,
    ...bosses('tank-suction', 'tank-return', 'tank-vent'),
  );
}

function tankBrackets(): Part {
  const [x, y] = TANK;
  return part(
    'dry-sump-tank-brackets',
    'steel',
    ...[230, 480].flatMap((z) => [
      ...band(x, y, z, 75.5, 250),
      box([1, y - 40, z - 14], [34, y + 40, z + 14], { corner: 6, edge: 3 }),
    ]),
  );
}

function catchTank(): Part {
  const at = frameAt([77, 60, 560], [0, 0, 1], [1, 0, 0]);
  const body = lathe(
    at,
    [
      [-3, 0],
      [-3, 30],
      [0, 40],
      [6, 46],
      [130, 46],
      ...quarterRound(130, 46, 148, 20),
      [156, 18],
      [156, 24],
      [168, 24],
      [172, 20],
      [172, 0],
    ],
    48,
  );
  const drain = lathe(
    frameAt([77, 60, 558], [0, 0, -1]),
    [
      [0, 12],
      [10, 12],
      [10, 8],
      [24, 8],
      [25, 6],
    ],
    18,
  );
  const foot = box([1, 38, 596], [36, 82, 626], { corner: 6, edge: 3 });
  return part(
    'catch-tank',
    'machined',
    body,
    drain,
    foot,
    ...band(77, 60, 611, 46, 300),
    ...bosses('catch-tank-inlet', 'catch-tank-vent'),
  );
}

function swirlPot(): Part {
  const at = frameAt([330, 345, 560], [0, 0, 1], [1, 0, 0]);
  const body = lathe(
    at,
    [
      [-18, 0],
      [-18, 14],
      [-14, 18],
      [4, 40],
      [10, 42],
      [118, 42],
      ...quarterRound(118, 42, 134, 22),
      [142, 20],
      [142, 28],
      [156, 30],
      [160, 26],
      [160, 0],
    ],
    48,
  );
  const outlet = lathe(
    frameAt([330, 345, 545], [0, 0, -1]),
    [
      [0, 14],
      [16, 14],
      [18, 16],
      [22, 16],
      [25, 13],
    ],
    28,
  );
  const bracket = box([322, 385, 600], [338, 505, 618], { corner: 3, edge: 2 });
  return part(
    'swirl-pot',
    'machined',
    body,
    outlet,
    bracket,
    ...band(330, 345, 609, 42, 180),
    ...bosses('swirl-inlet'),
  );
}
