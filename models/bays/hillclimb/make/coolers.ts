import { frameAt } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { circleOutline } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { box } from '../../../shapes/roundedBox.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { bar, sweepOutline } from '../../../shapes/sweep.ts';
import { portById } from './ports.ts';
import { bossOf } from './unions.ts';

/** Corrugated fin between two tubes: a thin strip folded to and fro along x, at height z0 to z1. */
function finStrip(x0: number, x1: number, y0: number, y1: number, z0: number, z1: number, pitch: number): Solid {
  const folds = Math.round((x1 - x0) / pitch);
  const path = Array.from(
    { length: folds * 2 + 1 },
    (_, k) => [x0 + ((x1 - x0) * k) / (folds * 2), (y0 + y1) / 2, k % 2 === 0 ? z0 : z1] as const,
  );
  const half = (y1 - y0) / 2;
  return sweepOutline(
    path,
    () => [
      [-half, -0.25],
      [half, -0.25],
      [half, 0.25],
      [-half, 0.25],
    ],
    [0, 0, 1],
  );
}

function core(
  x0: number,
  x1: number,
  y0: number,
  y1: number,
  z0: number,
  z1: number,
  rows: number,
  pitch: number,
): Solid[] {
  const solids: Solid[] = [];
  const step = (z1 - z0) / rows;
  for (let row = 0; row <= rows; row++) {
    const z = z0 + row * step;
    solids.push(box([x0, y0, z - 1.6], [x1, y1, z + 1.6], { corner: 1.5, edge: 1, steps: 1 }));
    if (row < rows) solids.push(finStrip(x0 + 1, x1 - 1, y0 + 2, y1 - 2, z + 1.8, z + step - 1.8, pitch));
  }
  return solids;
}

/** Oil cooler on the right: plates along x, a two-pass end tank with both ports at the rear. */
function oilCooler(): Part[] {
  const tanks = [
    box([461, 493, 264], [485, 547, 476], { corner: 8, edge: 5 }),
    box([325, 493, 264], [347, 547, 476], { corner: 8, edge: 5 }),
  ];
  const bosses = ['cooler-inlet', 'cooler-outlet'].map((id) => bossOf(portById(id)));
  const straps = [282, 460].map((z) => box([331, 546, z - 9], [479, 552, z + 9], { corner: 2.5, edge: 1.5 }));
  return [
    part('oil-cooler-core', 'machined', ...core(347, 461, 498, 542, 270, 470, 13, 9)),
    part('oil-cooler-tanks', 'machined', ...tanks, ...bosses, ...straps),
  ];
}

/** Radiator on the left: tubes along x, tanks above and below. */
function radiator(): Part[] {
  const top = box([40, -553, 344], [420, -487, 402], { corner: 12, edge: 10 });
  const bottom = box([40, -553, 126], [420, -487, 184], { corner: 12, edge: 10 });
  const bosses = ['radiator-inlet', 'radiator-outlet'].map((id) => bossOf(portById(id)));
  const sides = [40, 412].map((x) => box([x, -545, 184], [x + 8, -495, 344], { corner: 2.5, edge: 1.5 }));
  const cap = lathe(
    frameAt([360, -520, 400], [0, 0, 1]),
    [
      [0, 20],
      [8, 20],
      [8, 27],
      [14, 28],
      [18, 24],
      [18, 0],
    ],
    30,
  );
  const bleed = lathe(
    frameAt([60, -520, 400], [0, 0, 1]),
    [
      [0, 9],
      [6, 9],
      [8, 5],
      [12, 5],
      [13, 0],
    ],
    6,
  );
  return [
    part('radiator-core', 'black', ...core(48, 412, -541, -499, 188, 340, 10, 15)),
    part('radiator-tanks', 'machined', top, bottom, ...bosses, ...sides, cap, bleed),
  ];
}

/** The fan behind the radiator's inboard face: shroud, hub, blades. */
function fan(): Part {
  const at = frameAt([250, -480, 264], [0, 1, 0], [0, 0, 1]);
  const shroud = lathe(
    at,
    [
      [-8, 84],
      [-8, 92],
      [14, 90],
      [16, 88],
      [16, 85],
      [0, 84],
    ],
    48,
    true,
  );
  const hub = lathe(
    at,
    [
      [-2, 26],
      [12, 26],
      [16, 22],
      [20, 14],
      [20, 0],
    ],
    30,
  );
  const blades = Array.from({ length: 9 }, (_, k) => {
    const a = (2 * Math.PI * k) / 9;
    const path = [24, 40, 60, 80].map(
      (r) => [250 + r * Math.cos(a + r * 0.004), -474, 264 + r * Math.sin(a + r * 0.004)] as const,
    );
    return sweepOutline(
      path,
      (t) =>
        circleOutline(1, 14).map(([u, v]) => [u * (1.2 + 3.4 * 0) + v * (7 + 4 * t) * 0.5, v * (7 + 4 * t)] as const),
      [Math.cos(a + 1.57), 0, Math.sin(a + 1.57)],
    );
  });
  const arms = [45, 135, 225, 315].map((d) => {
    const a = (d * Math.PI) / 180;
    return bar(
      [
        [250 + 20 * Math.cos(a), -462, 264 + 20 * Math.sin(a)],
        [250 + 88 * Math.cos(a), -466, 264 + 88 * Math.sin(a)],
      ],
      4,
      12,
    );
  });
  return part('radiator-fan', 'black', shroud, hub, ...blades, ...arms);
}

export function coolerParts(): Part[] {
  return [...oilCooler(), ...radiator(), fan()];
}
