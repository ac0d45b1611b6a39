import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt, boltCircle, capScrew } from '../../../shapes/bolt.ts';
import { type Frame, frameAt, moved } from '../../../shapes/frame.ts';
import { cylinder, lathe, quarterRound } from '../../../shapes/lathe.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { box, boxOn } from '../../../shapes/roundedBox.ts';
import { skin } from '../../../shapes/skin.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { portById } from './ports.ts';
import { bossOf } from './unions.ts';

/** Middles of the four bores along the crankshaft, mm. */
export const BORES_X: readonly number[] = [425, 520, 615, 710];
const FRONT = 350;
const REAR = 800;

/** Half the block's width at height z beside x: a waist that swells round each bore, and a wide crankcase. */
function blockHalfWidth(x: number, z: number): number {
  const nearest = Math.min(...BORES_X.map((b) => Math.abs(x - b)));
  const swell = z > 290 ? 7 * Math.exp(-((nearest / 30) ** 4)) : 0;
  if (z > 430) return 104;
  if (z > 290) return 92 + swell;
  if (z > 240) return 92 + (30 * (290 - z)) / 50;
  return 122 - Math.max(0, 185 - z) * 0.15;
}

/** Rings across x from a half-width at each height, closed over top and bottom. */
function waisted(
  xs: readonly number[],
  heights: readonly number[],
  halfWidth: (x: number, z: number) => number,
): Solid {
  return skin(
    xs.map((x) => {
      const right: Vec3[] = heights.map((z) => [x, halfWidth(x, z), z]);
      const left: Vec3[] = [...heights].reverse().map((z) => [x, -halfWidth(x, z), z]);
      return [...right, ...left];
    }),
  );
}

function range(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, k) => from + k * step);
}

export function block(): Part {
  const heights = [172, 178, 186, 200, 220, 240, 252, 265, 278, 290, 296, 310, 340, 380, 410, 428, 434, 440, 452, 455];
  const body = waisted(range(FRONT, REAR, 11.25), heights, blockHalfWidth);
  const ribs = [-1, 1].flatMap((side) =>
    [377, 472, 567, 662, 757].map((x) =>
      box([x - 3, Math.min(side * 84, side * 122), 205], [x + 3, Math.max(side * 84, side * 122), 425], {
        corner: 2.5,
        edge: 2,
      }),
    ),
  );
  const webs = [-1, 1].map((side) =>
    box([360, Math.min(side * 90, side * 116), 352], [790, Math.max(side * 90, side * 103), 360], {
      corner: 3,
      edge: 2,
    }),
  );
  const plugs = [-1, 1].flatMap((side) =>
    BORES_X.map((x) => cylinder(frameAt([x, side * 96, 395], [0, side, 0]), 7, 15, 24)),
  );
  const mains = [-1, 1].flatMap((side) =>
    [400, 495, 590, 685].map((x) => bolt(frameAt([x, side * 121, 215], [0, side, 0]), 9)),
  );
  const bosses = ['crankcase-drain', 'block-water'].map((id) => bossOf(portById(id)));
  return part('engine-block', 'cast', body, ...ribs, ...webs, ...plugs, ...mains, ...bosses);
}

export function head(): Part {
  const heights = [455, 460, 470, 485, 500, 515, 530, 545, 555, 560];
  const body = waisted(range(FRONT, REAR + 5, 9.1), heights, (x, z) => {
    const scallop = 4 * Math.cos(((x - 425) / 95) * 2 * Math.PI);
    return (z > 475 && z < 540 ? 100 + scallop : 106) - (z === 455 || z === 560 ? 1.5 : 0);
  });
  const plugBosses = [-1, 1].flatMap((side) =>
    [377, 472, 567, 662, 757].map((x) => bolt(frameAt([x, side * 88, 560], [0, 0, 1]), 9)),
  );
  const flats = BORES_X.flatMap((x) =>
    [1, -1].map((side) =>
      boxOn(frameAt([x, side * 104, 507], [0, side, 0], [0, 0, 1]), [70, 58, 16], { corner: 14, edge: 2 }),
    ),
  );
  const bosses = ['gallery-feed', 'water-outlet'].map((id) => bossOf(portById(id)));
  const thermostat = lathe(
    frameAt([352, -60, 540], [-1, 0, 0]),
    [
      [-10, 34],
      [4, 34],
      [7, 31],
      [7, 27],
      [14, 25],
    ],
    32,
  );
  const rearPlate = boxOn(frameAt([806, 0, 510], [1, 0, 0], [0, 0, 1]), [150, 76, 6], { corner: 16, edge: 2 });
  return part('cylinder-head', 'cast', body, ...plugBosses, ...flats, ...bosses, thermostat, rearPlate);
}

export function camCover(): Part {
  const section = (x: number): Vec3[] => {
    const end = Math.min(1, Math.min(x - 355, 802 - x) / 14);
    const lift = 52 + 16 * Math.sqrt(Math.max(0, end * (2 - end)));
    const points: Vec3[] = [];
    for (let k = 0; k <= 28; k++) {
      const a = Math.PI * (k / 28);
      const y = 98 * Math.cos(a);
      // Two cam tunnels side by side with a valley for the coils between them.
      const tunnel = Math.max(0, 1 - ((Math.abs(y) - 52) / 46) ** 2) ** 0.5;
      const valley = 0.55 + 0.45 * tunnel;
      points.push([x, y, k === 0 || k === 28 ? 562 : 562 + lift * valley]);
    }
    return points;
  };
  const body = skin(range(355, 802, 14.9).map(section));
  const rail = box([350, -106, 556], [806, 106, 568], { corner: 12, edge: 3 });
  const screws = [-1, 1].flatMap((side) =>
    range(372, 788, 52).map((x) => capScrew(frameAt([x, side * 101, 568], [0, 0, 1]), 6)),
  );
  const coils = BORES_X.map((x) =>
    boxOn(frameAt([x, 0, 606], [0, 0, 1], [0, 1, 0]), [34, 26, 34], { corner: 6, edge: 3 }),
  );
  const ribs = range(395, 765, 37).flatMap((x) =>
    [-52, 52].map((y) => box([x - 1.5, y - 30, 616], [x + 1.5, y + 30, 633], { corner: 1.4, edge: 1, steps: 1 })),
  );
  const cap = lathe(
    frameAt([440, -52, 626], [0, 0, 1]),
    [[0, 24], [8, 24], [8, 30], [20, 30], ...quarterRound(20, 30, 24, 24), [24, 0]],
    30,
  );
  return part(
    'cam-cover',
    'black',
    body,
    rail,
    ...screws,
    ...coils,
    ...ribs,
    cap,
    bossOf(portById('cam-cover-breather')),
  );
}

export function sump(): Part {
  const pan = waisted(range(FRONT - 5, REAR, 14), [118, 121, 128, 140, 155, 168, 173], (x, z) => {
    const groove = Math.abs(((x - 350) % 112) - 56) < 14 ? 6 : 0;
    return z > 165 ? 128 : 96 + ((z - 118) / 50) * 26 - groove - (z === 118 ? 4 : 0);
  });
  const screws = [-1, 1].flatMap((side) =>
    range(365, 785, 60).map((x) => capScrew(frameAt([x, side * 122, 168], [0, 0, -1]), 6)),
  );
  const fins = range(400, 760, 30).map((x) =>
    box([x - 2, -80, 108], [x + 2, 80, 121], { corner: 1.8, edge: 1, steps: 1 }),
  );
  return part('sump-pan', 'cast', pan, ...screws, ...fins);
}

export function timingCover(): Part {
  const outline = (x: number, grow: number): Vec3[] => {
    const points: Vec3[] = [];
    for (let k = 0; k < 64; k++) {
      const a = (2 * Math.PI * k) / 64;
      const s = Math.sin(a);
      const z = 365 + (198 + grow) * s;
      const wide = 84 + 26 * Math.max(0, s) - 12 * Math.max(0, -s) ** 3;
      const c = Math.cos(a);
      points.push([x, (wide + grow) * Math.sign(c) * Math.abs(c) ** 0.45, z]);
    }
    return points;
  };
  const body = skin([
    outline(352, 0),
    outline(342, 0),
    outline(340, -3),
    outline(326, -10),
    outline(322, -15),
    outline(321, -30),
  ]);
  const nose = (y: number, z: number, r: number): Solid =>
    lathe(
      frameAt([326, y, z], [-1, 0, 0]),
      [
        [0, r + 8],
        [4, r],
        [9, r],
        [9, r * 0.6],
        [11, r * 0.6],
      ],
      36,
    );
  const screws = Array.from({ length: 16 }, (_, k) => {
    const p = outline(340, -8)[k * 4 + 2] as Vec3;
    return bolt(frameAt(p, [-1, 0, 0]), 6);
  });
  return part('timing-cover', 'cast', body, nose(0, 230, 44), nose(0, 420, 30), ...screws);
}

export function waterPump(): Part {
  const volute = lathe(
    frameAt([420, -84, 270], [0, -1, 0]),
    [[0, 58], [18, 58], ...quarterRound(18, 58, 34, 34), [38, 32], [52, 30]],
    40,
  );
  const feet = boltCircle(frameAt([420, -102, 270], [0, -1, 0]), 48, 6, 6, 20);
  return part('water-pump', 'cast', volute, feet, bossOf(portById('water-pump-inlet')));
}

export function oilFilter(): Part {
  const headBody = box([697, 98, 346], [773, 185, 400], { corner: 10, edge: 4 });
  const can = lathe(
    frameAt([735, 150, 346], [0, 0, -1]),
    [[0, 30], [2, 38], [78, 38], ...quarterRound(78, 38, 92, 22), [93, 0]],
    36,
  );
  const nut = lathe(
    frameAt([735, 150, 256], [0, 0, -1]),
    [
      [0, 13],
      [9, 13],
      [10, 11],
    ],
    6,
  );
  const screws = [705, 765].flatMap((x) => [bolt(frameAt([x, 130, 400], [0, 0, 1]), 8)]);
  return part('oil-filter', 'black', headBody, can, nut, ...screws);
}

export function starter(): Part {
  const at: Frame = frameAt([795, -128, 215], [-1, 0, 0]);
  const body = lathe(at, [[0, 40], [22, 40], [26, 34], [110, 34], ...quarterRound(110, 34, 120, 20), [121, 0]], 32);
  const solenoid = cylinder(moved(at, 18, 0, 52), 80, 20, 26, 3);
  return part('starter-motor', 'black', body, solenoid, bolt(moved(at, 98, 8, 52), 6), bolt(moved(at, 98, -8, 52), 6));
}

export function engineParts(): Part[] {
  return [block(), head(), camCover(), sump(), timingCover(), waterPump(), oilFilter(), starter()];
}
