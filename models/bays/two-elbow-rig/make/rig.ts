import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt } from '../../../shapes/bolt.ts';
import { frameAt, moved } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { circleOutline, type Outline, roundedRectangle } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { extrude, plate } from '../../../shapes/plate.ts';
import { box } from '../../../shapes/roundedBox.ts';
import { union } from '../../../shapes/union.ts';

/** The quarter-rounds' middles: where the two R100 bends of the known answer turn about. */
export const FORMERS: readonly {
  readonly name: string;
  readonly middle: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
}[] = [
  { name: 'former-a', middle: [50, 100, 0], axis: [0, 0, 1], up: [0, -1, 0] },
  { name: 'former-b', middle: [150, 200, 100], axis: [1, 0, 0], up: [0, 0, -1] },
];

/** From the hose axis to the former's rim, mm: the hose (15.7 over the braid) lies free of it. */
export const RIM_RADIUS_MM = 74;

/** Quarter of a disc about the frame's point, from up to side, as the hose turns round it. */
function quadrant(radius: number): Outline {
  const arc = Array.from({ length: 25 }, (_, k) => {
    const a = ((k * 90) / 24) * (Math.PI / 180);
    return [radius * Math.sin(a), radius * Math.cos(a)] as const;
  });
  return [[0, 0], ...arc.reverse()];
}

function former({ name, middle, axis, up }: (typeof FORMERS)[number]): Part {
  const frame = frameAt(middle, axis, up);
  const at = moved(frame, -9);
  const hub = lathe(
    moved(frame, -12),
    [
      [0, 14],
      [1, 15],
      [23, 15],
      [24, 14],
    ],
    32,
  );
  return part(name, 'machined', extrude(at, quadrant(RIM_RADIUS_MM), 18, 2), hub, bolt(moved(frame, 12, 0, 0), 8));
}

/** The plate under all, the posts, and the two unions whose seats are the ports. */
export function twoElbowRig(): Part[] {
  const base = plate(
    frameAt([90, 150, -90], [0, 0, 1], [0, 1, 0]),
    roundedRectangle(330, 420, 12),
    [
      [-130, 180],
      [130, 180],
      [-130, -180],
      [130, -180],
    ].map((at) => circleOutline(6, 20, at as [number, number])),
    10,
  );
  const postA = box([38, 88, -82], [62, 112, -6], { corner: 5, edge: 2 });
  const postB = box([198, 188, -82], [216, 212, 114], { corner: 5, edge: 2 });
  const armB = box([160, 189, 89], [210, 211, 111], { corner: 5, edge: 2 });
  const carrierB = box([198, 282, -82], [216, 318, 172], { corner: 6, edge: 3 });
  const carrierA = box([-70, -60, -82], [-52, -40, 66], { corner: 5, edge: 2 });
  const armA = box([-66, -56, 48], [20, 16, 66], { corner: 8, edge: 3 });
  return [
    part('base-plate', 'steel', base),
    part('posts', 'steel', postA, postB, armB, carrierA, armA, carrierB),
    ...FORMERS.map(former),
    part('port-a-union', 'machined', union([0, 0, 30], [0, 0, -1], 8, 18)),
    part('port-b-union', 'machined', union([180, 300, 150], [-1, 0, 0], 8, 18)),
  ];
}
