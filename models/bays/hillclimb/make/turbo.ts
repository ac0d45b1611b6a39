import { add, addScaled, type Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt, boltCircle } from '../../../shapes/bolt.ts';
import { frameAt } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { boxOn } from '../../../shapes/roundedBox.ts';
import { skin } from '../../../shapes/skin.ts';
import { bar, bentPath, pipe } from '../../../shapes/sweep.ts';
import { portById, TURBO } from './ports.ts';
import { bossOf } from './unions.ts';

const [, TY, TZ] = TURBO;
const shaft = (x: number) => frameAt([x, TY, TZ], [1, 0, 0], [0, 0, 1]);

/** Turbine housing: the gas comes in at the top heading +Y and winds down round the wheel. */
function turbine(): Part {
  const x = 870;
  const section = (turn: number): number => 27 - 16 * turn;
  const path: Vec3[] = [];
  for (let k = 0; k <= 6; k++) path.push([x, 240 + ((TY - 240) * k) / 6, TZ + 52]);
  const steps = 38;
  for (let k = 1; k <= steps; k++) {
    const turn = k / steps;
    const a = turn * 5.9;
    const r = 25 + section(turn);
    path.push([x, TY + r * Math.sin(a), TZ + r * Math.cos(a)]);
  }
  const straightShare = 6 / (6 + steps);
  const scroll = bar(path, (t) => (t <= straightShare ? 27 : section((t - straightShare) / (1 - straightShare))), 28);
  const inletFlange = boxOn(frameAt([x, 245, TZ + 52], [0, 1, 0], [0, 0, 1]), [82, 82, 10], { corner: 18, edge: 1.5 });
  const body = lathe(
    shaft(840),
    [
      [0, 46],
      [8, 48],
      [10, 40],
      [16, 36],
      [46, 36],
      [56, 40],
      [64, 42],
      [66, 50],
      [74, 50],
      [74, 36],
      [54, 31],
      [46, 31],
    ],
    44,
  );
  const clamps = boltCircle(frameAt([838, TY, TZ], [-1, 0, 0], [0, 0, 1]), 43, 6, 6, 15);
  return part('turbine-housing', 'rust', scroll, inletFlange, body, clamps);
}

/** Where round the wheel the compressor's scroll ends: over the top and inboard, so that the outer side stays free. */
const DISCHARGE_DEG = 135;
const DISCHARGE: Vec3 = [757, TY + 65 * Math.SQRT1_2, TZ + 65 * Math.SQRT1_2];
const ALONG: Vec3 = [0, -Math.SQRT1_2, Math.SQRT1_2];

/** Compressor housing: the scroll grows round the wheel and leaves upward and inboard. */
function compressor(): Part {
  const x = 757;
  const section = (turn: number): number => 9 + 15 * turn;
  const path: Vec3[] = [];
  const steps = 42;
  for (let k = 0; k <= steps; k++) {
    const turn = k / steps;
    const a = ((DISCHARGE_DEG - 335 * (1 - turn)) * Math.PI) / 180;
    const r = 41 + section(turn);
    path.push([x, TY + r * Math.sin(a), TZ - r * Math.cos(a)]);
  }
  for (let k = 1; k <= 6; k++) path.push(addScaled(DISCHARGE, ALONG, 10 * k));
  const share = steps / (steps + 6);
  const scroll = bar(path, (t) => (t < share ? section(t / share) : 24), 28);
  const bead = lathe(
    frameAt(addScaled(DISCHARGE, ALONG, 52), ALONG),
    [
      [0, 23],
      [3, 26.5],
      [6, 26.5],
      [9, 23],
    ],
    34,
  );
  const cover = lathe(
    shaft(690),
    [
      [0, 31],
      [0, 36],
      [3, 38],
      [8, 36],
      [30, 36],
      [44, 40],
      [54, 54],
      [66, 60],
      [78, 58],
      [86, 62],
      [92, 62],
      [92, 20],
      [60, 24],
      [30, 30],
    ],
    48,
    true,
  );
  const back = lathe(
    shaft(778),
    [
      [0, 66],
      [2, 70],
      [10, 70],
      [12, 66],
      [14, 46],
      [20, 40],
    ],
    48,
  );
  const screws = boltCircle(frameAt([777, TY, TZ], [-1, 0, 0], [0, 0, 1]), 65, 8, 6, 10);
  const nose = lathe(
    shaft(716),
    [
      [-8, 0],
      [-4, 6],
      [6, 8],
      [14, 9],
    ],
    20,
  );
  const blades = Array.from({ length: 8 }, (_, k) => {
    const a = (k * Math.PI) / 4;
    const at = add([722, TY, TZ], [0, 18 * Math.cos(a), 18 * Math.sin(a)]);
    return boxOn(frameAt(at, [0, Math.cos(a), Math.sin(a)], [1, 0, 0.0]), [1.6, 14, 22], {
      corner: 0.7,
      edge: 0.5,
      steps: 1,
    });
  });
  return part('compressor-housing', 'cast', scroll, bead, cover, back, screws, nose, ...blades);
}

function centreHousing(): Part {
  const body = lathe(
    shaft(796),
    [
      [-2, 40],
      [2, 46],
      [7, 46],
      [10, 33],
      [18, 30],
      [26, 33],
      [33, 38],
      [36, 48],
      [44, 48],
    ],
    44,
  );
  const feed = boxOn(frameAt([TURBO[0], TY, 533], [0, 0, 1], [1, 0, 0]), [40, 24, 24], { corner: 9, edge: 2 });
  const drain = boxOn(frameAt([TURBO[0], TY, 474], [0, 0, -1], [1, 0, 0]), [58, 32, 24], { corner: 12, edge: 2 });
  const feedBolts = [-14, 14].map((y) => bolt(frameAt([TURBO[0], TY + y, 545], [0, 0, 1]), 4));
  const drainBolts = [-22, 22].map((y) => bolt(frameAt([TURBO[0], TY + y, 462], [0, 0, -1]), 5));
  const water = ['turbo-water-inlet', 'turbo-water-outlet'].map((id) => bossOf(portById(id)));
  return part('turbo-centre-housing', 'cast', body, feed, drain, ...feedBolts, ...drainBolts, ...water);
}

function airFilter(): Part {
  const pleats = 40;
  const ring = (along: number, radius: number) =>
    Array.from({ length: pleats * 2 }, (_, k) => {
      const a = (Math.PI * k) / pleats;
      const r = radius - (k % 2) * 5;
      return [690 - along, TY + r * Math.cos(a), TZ + r * Math.sin(a)] as Vec3;
    });
  const mesh = skin([ring(24, 50), ring(26, 54), ring(60, 50), ring(100, 44), ring(128, 40), ring(130, 36)]);
  const at = frameAt([692, TY, TZ], [-1, 0, 0]);
  const neck = lathe(
    at,
    [
      [0, 36.5],
      [0, 41],
      [20, 42],
      [24, 57],
      [32, 57],
      [34, 54],
    ],
    40,
  );
  const nose = lathe(
    at,
    [
      [128, 43],
      [130, 46],
      [140, 45],
      [146, 34],
      [147, 0],
    ],
    40,
  );
  const band = lathe(
    at,
    [
      [6, 41],
      [6, 43],
      [15, 43],
      [15, 41],
    ],
    36,
  );
  return part('air-filter', 'black', mesh, neck, nose, band);
}

function chargePipe(): Part {
  const path = bentPath(
    [
      addScaled(DISCHARGE, ALONG, 56),
      addScaled(DISCHARGE, ALONG, (715 - DISCHARGE[2]) / ALONG[2]),
      [620, -235, 715],
      [620, -235, 640],
    ],
    62,
    5,
  );
  const tube = pipe(path, 28, 2, 36);
  const hump = (point: Vec3, axis: Vec3) =>
    lathe(
      frameAt(point, axis),
      [
        [-26, 29],
        [-24, 33],
        [-6, 33],
        [0, 36],
        [6, 33],
        [24, 33],
        [26, 29],
      ],
      36,
    );
  const worm = (point: Vec3, axis: Vec3, at: number) =>
    lathe(
      frameAt(point, axis),
      [
        [at - 6, 33],
        [at - 6, 34.6],
        [at + 6, 34.6],
        [at + 6, 33],
      ],
      32,
    );
  const joins: readonly (readonly [Vec3, Vec3])[] = [
    [addScaled(DISCHARGE, ALONG, 80), ALONG],
    [
      [620, -235, 652],
      [0, 0, -1],
    ],
  ];
  const sleeves = joins.flatMap(([p, a]) => [hump(p, a), worm(p, a, -15), worm(p, a, 15)]);
  return part('charge-pipe', 'machined', tube, ...sleeves);
}

export function turboParts(): Part[] {
  return [turbine(), centreHousing(), compressor(), airFilter(), chargePipe()];
}
