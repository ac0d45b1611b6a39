import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt } from '../../../shapes/bolt.ts';
import { frameAt } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { circleOutline, type Outline } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { plate } from '../../../shapes/plate.ts';
import { skin } from '../../../shapes/skin.ts';
import { bar } from '../../../shapes/sweep.ts';
import { triangulateEitherWay } from '../../../shapes/triangulate.ts';

/** Holes through the firewall: where, and the bore of the grommet in each, mm. */
export const GROMMETS: readonly { readonly name: string; readonly at: Vec3; readonly boreMm: number }[] = [
  { name: 'fuel-grommet', at: [0, -330, 120], boreMm: 20 },
  { name: 'loom-grommet', at: [0, -60, 130], boreMm: 34 },
  { name: 'throttle-grommet', at: [0, 170, 640], boreMm: 14 },
];

export function panelParts(): Part[] {
  return [firewall(), ...GROMMETS.map(grommet), firewallFasteners(), tub(), engineCover(), coverRib(), coverStruts()];
}

function firewall(): Part {
  const half: [number, number][] = [
    [430, 70],
    [556, 480],
    [556, 520],
    [480, 790],
    [455, 815],
    [420, 826],
  ];
  const outline: Outline = [...half, ...half.map(([y, z]) => [-y, z] as [number, number]).reverse()];
  const frame = frameAt([-6, 0, 0], [1, 0, 0], [0, 0, 1]);
  const flat = outline.map(([y, z]) => [-y, z] as const).reverse();
  const holes = GROMMETS.map(({ at, boreMm }) => circleOutline(boreMm / 2 + 12, 40, [-at[1], at[2]]));
  return part('firewall', 'composite', plate(frame, flat, holes, 6));
}

function grommet({ name, at, boreMm }: (typeof GROMMETS)[number]): Part {
  const b = boreMm / 2;
  const profile: [number, number][] = [
    [-11, b + 2],
    [-12, b + 6],
    [-11, b + 15],
    [-7, b + 17],
    [-6.2, b + 12],
    [0.2, b + 12],
    [1, b + 17],
    [5, b + 15],
    [6, b + 6],
    [5, b + 2],
    [0, b],
    [-6, b],
  ];
  return part(name, 'wire', lathe(frameAt([at[0], at[1], at[2]], [1, 0, 0]), profile, 44, true));
}

function firewallFasteners(): Part {
  const spots: [number, number][] = [];
  for (let k = 0; k < 9; k++) spots.push([-400 + k * 100, 100], [-400 + k * 100, 795]);
  for (const s of [-1, 1]) for (let k = 1; k < 5; k++) spots.push([s * (430 + k * 24), 95 + k * 85]);
  return part('firewall-fasteners', 'steel', ...spots.map(([y, z]) => bolt(frameAt([0, y, z], [1, 0, 0]), 6)));
}

/** The rear of the tub ahead of the firewall: floor and walls of moulded fibreglass, open at the top, with turned-out lips. */
function tub(): Part {
  const wall: [number, number][] = [
    [516, 566],
    [500, 560],
    [488, 330],
    [478, 230],
    [462, 168],
    [436, 126],
    [400, 102],
    [330, 88],
    [200, 80],
    [0, 78],
  ];
  const half = [
    ...wall,
    ...wall
      .slice(0, -1)
      .reverse()
      .map(([y, z]) => [-y, z] as [number, number]),
  ];
  const outline = [...half, ...thicker(half, 5).reverse()];
  const section = (x: number): Vec3[] => outline.map(([y, z]) => [x, y * (1 + 0.0002 * (x + 6)), z]);
  const xs = Array.from({ length: 13 }, (_, k) => -346 + (340 / 12) * k);
  const cap = triangulateEitherWay(outline);
  return part('tub-rear', 'composite', skin(xs.map(section), { cap: () => cap }));
}

/** An open chain moved to its inner side by `by`. */
function thicker(chain: readonly (readonly [number, number])[], by: number): [number, number][] {
  return chain.map(([y, z], i) => {
    const [py, pz] = chain[Math.max(0, i - 1)] as readonly [number, number];
    const [ny, nz] = chain[Math.min(chain.length - 1, i + 1)] as readonly [number, number];
    const l = Math.hypot(ny - py, nz - pz);
    return [y + (by * (nz - pz)) / l, z - (by * (ny - py)) / l];
  });
}

/** The engine cover, left half only so that the bay can be seen: a domed skin with a return edge. */
function coverHeight(x: number, y: number): number {
  const fall = 0.00012 * (x - 60) ** 2;
  const side = Math.max(0, -y - 250);
  return 848 - fall - 0.00144 * side ** 2;
}

function engineCover(): Part {
  const xs = Array.from({ length: 27 }, (_, k) => 30 + k * 32);
  const ys = Array.from({ length: 26 }, (_, k) => -20 - k * 22);
  const rings = xs.map((x) => {
    const outer = ys.map((y) => [x, y, coverHeight(x, y)] as Vec3);
    const inner = ys.map((y) => [x, y + 0.6, coverHeight(x, y) - 4] as Vec3).reverse();
    return [...outer, ...inner];
  });
  return part('engine-cover', 'composite', skin(rings));
}

function coverRib(): Part {
  const ribs = [150, 450, 750].map((x) => {
    const ys = Array.from({ length: 26 }, (_, k) => -40 - k * 20);
    return skin(
      ys.map((y) => {
        const z = coverHeight(x, y) - 3;
        return [
          [x - 14, y, z],
          [x - 8, y, z - 14],
          [x + 8, y, z - 14],
          [x + 14, y, z],
        ] as Vec3[];
      }),
    );
  });
  return part('engine-cover-ribs', 'composite', ...ribs);
}

/** Two struts from the left roof stay to the cover's ribs. */
function coverStruts(): Part {
  const struts = [450, 750].map((x) => {
    const t = (x - 12) / 918;
    const foot: Vec3 = [x, -480 - 34 * t, 815 - 315 * t];
    return bar([foot, [x, foot[1] + 6, coverHeight(x, foot[1]) - 12]], 6, 14);
  });
  return part('engine-cover-struts', 'steel', ...struts);
}
