import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt } from '../../../shapes/bolt.ts';
import { frameAt, moved } from '../../../shapes/frame.ts';
import { lathe, quarterRound, type Turned } from '../../../shapes/lathe.ts';
import { roundedRectangle } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { box } from '../../../shapes/roundedBox.ts';
import { skin } from '../../../shapes/skin.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { sweepOutline } from '../../../shapes/sweep.ts';

interface Pulley {
  readonly y: number;
  readonly z: number;
  readonly radius: number;
}
const CRANK: Pulley = { y: 0, z: 230, radius: 52 };
const ALTERNATOR: Pulley = { y: -172, z: 392, radius: 30 };
const PUMP: Pulley = { y: 165, z: 215, radius: 44 };

/** A grooved pulley in a plane x = const, its middle at x. */
function pulley(p: Pulley, x: number, width: number): Solid {
  const profile: Turned[] = [
    [-width / 2, p.radius - 16],
    [-width / 2, p.radius + 3],
  ];
  const grooves = 5;
  for (let k = 0; k < grooves; k++) {
    const from = -width / 2 + 1.5 + (k * (width - 3)) / grooves;
    profile.push([from, p.radius], [from + (width - 3) / grooves / 2, p.radius - 2.5]);
  }
  profile.push([width / 2 - 1.5, p.radius], [width / 2, p.radius + 3], [width / 2, p.radius - 16]);
  return lathe(frameAt([x, p.y, p.z], [1, 0, 0]), profile, 44);
}

/** A belt round two pulleys: a closed loop of flat band. */
function belt(a: Pulley, b: Pulley, x: number, width: number): Solid {
  const along = Math.atan2(b.z - a.z, b.y - a.y);
  const apart = Math.hypot(b.y - a.y, b.z - a.z);
  const lean = Math.asin((b.radius - a.radius) / apart);
  const rings: Vec3[][] = [];
  const arc = (p: Pulley, from: number, to: number): void => {
    for (let k = 0; k <= 16; k++) {
      const q = from + ((to - from) * k) / 16;
      const at = (r: number, dx: number): Vec3 => [x + dx, p.y + r * Math.cos(q), p.z + r * Math.sin(q)];
      rings.push([
        at(p.radius, -width / 2),
        at(p.radius, width / 2),
        at(p.radius + 4, width / 2),
        at(p.radius + 4, -width / 2),
      ]);
    }
  };
  const quarter = Math.PI / 2;
  arc(a, along + quarter + lean, along + 3 * quarter - lean);
  arc(b, along - quarter - lean, along + quarter + lean);
  return skin(rings, { loop: true });
}

export function driveParts(): Part[] {
  const hub = (p: Pulley, x: number): Solid => bolt(frameAt([x, p.y, p.z], [-1, 0, 0]), 12);
  return [
    part('crank-pulley', 'steel', pulley(CRANK, 306, 20), pulley(CRANK, 284, 18), hub(CRANK, 275)),
    part('alternator-pulley', 'steel', pulley(ALTERNATOR, 306, 20), hub(ALTERNATOR, 296)),
    part('alternator-belt', 'black', belt(CRANK, ALTERNATOR, 306, 16)),
    part(
      'oil-pump-pulley',
      'steel',
      pulley(PUMP, 284, 18),
      hub(PUMP, 275),
      lathe(
        frameAt([284, 165, 215], [1, 0, 0]),
        [
          [0, 12],
          [50, 12],
        ],
        24,
      ),
    ),
    part('oil-pump-belt', 'black', belt(CRANK, PUMP, 284, 14)),
    alternator(),
  ];
}

function alternator(): Part {
  const at = frameAt([326, ALTERNATOR.y, ALTERNATOR.z], [1, 0, 0], [0, 0, 1]);
  const shell = lathe(
    at,
    [
      [-12, 12],
      [0, 12],
      [0, 34],
      ...quarterRound(0, 34, 14, 58),
      [16, 60],
      [30, 60],
      [32, 56],
      [58, 56],
      [60, 60],
      [76, 60],
      ...quarterRound(76, 60, 94, 36),
      [95, 0],
    ],
    48,
  );
  const vents = Array.from({ length: 16 }, (_, k) => {
    const a = (2 * Math.PI * k) / 16;
    const p = moved(at, 80, 46 * Math.sin(a), 46 * Math.cos(a));
    return lathe(
      p,
      [
        [0, 5],
        [14, 5],
        [15, 4],
      ],
      10,
    );
  });
  const ears = [
    box([340, -176, 448], [366, -150, 470], { corner: 8, edge: 3 }),
    box([340, -150, 322], [372, -88, 344], { corner: 8, edge: 3 }),
  ];
  return part('alternator', 'cast', shell, ...vents, ...ears, bolt(frameAt([340, -163, 459], [-1, 0, 0]), 8));
}

export function gearboxParts(): Part[] {
  const ring = (x: number, w: number, h: number, corner: number, z: number): Vec3[] =>
    roundedRectangle(w, h, corner, 11).map(([u, v]) => [x, u, z + v]);
  const bell = skin([
    ring(800, 330, 330, 164, 232),
    ring(812, 330, 330, 164, 232),
    ring(814, 316, 316, 157, 232),
    ring(850, 306, 306, 150, 232),
    ring(900, 262, 276, 120, 234),
    ring(945, 214, 244, 70, 238),
    ring(950, 226, 252, 66, 238),
    ring(960, 226, 252, 66, 238),
  ]);
  const bellRibs = Array.from({ length: 10 }, (_, k) => {
    const a = (2 * Math.PI * (k + 0.5)) / 10;
    const foot = (x: number, r: number): Vec3 => [x, r * Math.cos(a), 233 + r * Math.sin(a)];
    return sweepOutline(
      [foot(813, 152), foot(840, 152), foot(880, 138), foot(920, 120), foot(945, 110)],
      () => roundedRectangle(7, 18, 2.5, 2),
      [0, Math.cos(a), Math.sin(a)],
    );
  });
  const bellBolts = Array.from({ length: 10 }, (_, k) => {
    const a = (2 * Math.PI * k) / 10;
    return bolt(frameAt([813, 157 * Math.cos(a), 232 + 157 * Math.sin(a)], [1, 0, 0]), 9);
  });
  const casing = skin([
    ring(960, 226, 252, 66, 238),
    ring(972, 226, 252, 66, 238),
    ring(976, 200, 226, 54, 238),
    ring(1060, 206, 236, 60, 236),
    ring(1120, 224, 250, 80, 232),
    ring(1180, 206, 236, 60, 236),
    ring(1300, 170, 210, 50, 240),
    ring(1306, 186, 226, 54, 240),
    ring(1316, 186, 226, 54, 240),
    ring(1320, 160, 200, 50, 240),
    ring(1360, 130, 160, 50, 240),
    ring(1364, 110, 140, 40, 240),
  ]);
  const casingRibs = [1000, 1030, 1210, 1240, 1270].flatMap((x) => [
    box([x - 3, -108, 130], [x + 3, 108, 345], { corner: 2.5, edge: 2, steps: 1 }),
  ]);
  const rearBolts = [60, 120, 240, 300, 0, 180].map((d) => {
    const a = (d * Math.PI) / 180;
    return bolt(frameAt([1316, 84 * Math.cos(a), 240 + 100 * Math.sin(a)], [1, 0, 0]), 8);
  });
  const shafts = [1, -1].flatMap((side) => {
    const at = frameAt([1120, side * 105, 232], [0, side, 0]);
    const boot: Turned[] = [[26, 46]];
    for (let k = 0; k < 6; k++) boot.push([30 + k * 9, 44 - k * 4], [34 + k * 9, 38 - k * 4]);
    return [lathe(at, [[0, 60], [8, 60], [8, 50], [24, 50], ...boot, [90, 15], [330, 14], [331, 0]], 36)];
  });
  return [
    part('bellhousing', 'cast', bell, ...bellRibs, ...bellBolts),
    part('gearbox', 'cast', casing, ...casingRibs, ...rearBolts),
    part('drive-shafts', 'steel', ...shafts),
  ];
}
