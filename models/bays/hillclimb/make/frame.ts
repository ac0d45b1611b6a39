import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { bolt } from '../../../shapes/bolt.ts';
import { frameAt } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { circleOutline, type Outline, roundedRectangle } from '../../../shapes/outline.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { plate } from '../../../shapes/plate.ts';
import type { Solid } from '../../../shapes/solid.ts';
import { bar, bentPath, straight } from '../../../shapes/sweep.ts';

const TUBE = 17.5;
const BRACE = 13;

function tube(a: Vec3, b: Vec3, radius = BRACE): Solid {
  return bar(straight(a, b, 120), radius, 20);
}

/** Right and left of the same thing. */
function both<T>(make: (side: 1 | -1) => readonly T[]): T[] {
  return [...make(1), ...make(-1)];
}

/** A weld bead where tubes meet: a slightly larger soft ring. */
function node(at: Vec3, axis: Vec3, radius = TUBE): Solid {
  return lathe(
    frameAt(at, axis),
    [
      [-20, radius - 1],
      [-14, radius + 2],
      [0, radius + 3.5],
      [14, radius + 2],
      [20, radius - 1],
    ],
    26,
  );
}

export function frameParts(): Part[] {
  const lower = both((s) => [
    bar(
      bentPath(
        [
          [-10, s * 430, 82],
          [760, s * 430, 82],
          [1330, s * 215, 92],
        ],
        260,
        2,
      ),
      TUBE,
      26,
    ),
  ]);
  const upper = both((s) => [
    bar(
      bentPath(
        [
          [-10, s * 565, 505],
          [860, s * 565, 505],
          [1330, s * 225, 430],
        ],
        260,
        2,
      ),
      TUBE,
      26,
    ),
  ]);
  const uprights = both((s) => [
    tube([20, s * 430, 82], [20, s * 565, 505], BRACE),
    tube([740, s * 430, 82], [740, s * 565, 505], BRACE),
    tube([930, s * 366, 85], [930, s * 514, 494], BRACE),
    tube([1322, s * 217, 92], [1322, s * 230, 431], BRACE),
    tube([750, s * 430, 86], [920, s * 516, 490], 11),
    tube([940, s * 362, 88], [1310, s * 236, 428], 11),
  ]);
  const stays = both((s) => [tube([12, s * 480, 815], [930, s * 514, 500], TUBE)]);
  const cross = [
    tube([20, -430, 82], [20, 430, 82], BRACE),
    tube([930, -366, 85], [930, 366, 85], BRACE),
    tube([1325, -217, 92], [1325, 217, 92], TUBE),
    tube([1325, -228, 431], [1325, 228, 431], TUBE),
    bar(
      bentPath(
        [
          [12, -565, 505],
          [12, -480, 818],
          [12, 480, 818],
          [12, 565, 505],
        ],
        90,
        5,
      ),
      TUBE,
      26,
    ),
  ];
  const nodes = both((s) => [
    node([20, s * 430, 82], [1, 0, 0]),
    node([740, s * 426, 82], [1, s * -0.05, 0]),
    node([930, s * 366, 85], [0.93, s * -0.36, 0.016]),
    node([740, s * 563, 505], [1, s * -0.05, 0]),
    node([930, s * 514, 494], [0.8, s * -0.58, -0.13]),
    node([20, s * 565, 505], [1, 0, 0]),
  ]);
  return [
    part('frame-lower-rails', 'black', ...lower),
    part('frame-upper-rails', 'black', ...upper),
    part('frame-bracing', 'black', ...uprights, ...nodes),
    part('frame-roof-stays', 'black', ...stays),
    part('frame-crossmembers', 'black', ...cross),
    engineMounts(),
    tabs(),
    clampBracket(),
  ];
}

function engineMounts(): Part {
  const solids = both((s) => {
    const plateFrame = frameAt([594, s * 128, 150], [1, 0, 0], [0, 0, 1]);
    const wing: Outline =
      s > 0
        ? [
            [0, 0],
            [-250, -52],
            [-286, -52],
            [-286, -34],
            [-60, 62],
            [0, 70],
          ]
        : [
            [0, 0],
            [0, 70],
            [60, 62],
            [286, -34],
            [286, -52],
            [250, -52],
          ];
    const rubber = lathe(
      frameAt([560, s * 404, 108], [1, 0, 0]),
      [
        [-2, 18],
        [0, 22],
        [52, 22],
        [54, 18],
      ],
      32,
    );
    const hole = circleOutline(13, 20, [s * -70, 12]);
    const right = s > 0 ? [...wing].reverse() : [...wing].reverse();
    return [plate(plateFrame, ccw(right), [hole], 8), rubber, bolt(frameAt([614, s * 404, 108], [1, 0, 0]), 10)];
  });
  return part('engine-mounts', 'steel', ...solids);
}

/** The outline the counter-clockwise way round. */
function ccw(outline: Outline): Outline {
  let area = 0;
  outline.forEach(([u, v], i) => {
    const [nu, nv] = outline[(i + 1) % outline.length] as readonly [number, number];
    area += u * nv - nu * v;
  });
  return area >= 0 ? outline : [...outline].reverse();
}

/** Sheet tabs welded to the rails, edges as sawn. */
function tabs(): Part {
  const solids = both((s) =>
    [240, 330, 450, 680, 800].flatMap((x) => {
      const at = frameAt([x, s * 552, 512], [1, 0, 0], [0, 0, 1]);
      const shape = roundedRectangle(34, 40, 8, 4);
      const shifted: Outline = shape.map(([u, v]) => [u + s * 6, v + 12] as const);
      return [plate(at, shifted, [circleOutline(5, 16, [s * 6, 18])], 3)];
    }),
  );
  const cooler = [282, 460].flatMap((z) =>
    [345, 465].map((x) =>
      plate(frameAt([x, 566, z], [1, 0, 0], [0, 0, 1]), roundedRectangle(44, 26, 5, 4), [circleOutline(4, 14)], 3),
    ),
  );
  const radiator = [60, 400].map((x) =>
    plate(frameAt([x, -491, 110], [1, 0, 0], [0, 0, 1]), roundedRectangle(80, 60, 6, 4), [circleOutline(6, 16)], 3),
  );
  return part('frame-tabs', 'steel', ...solids, ...cooler, ...radiator);
}

/** The P clamp on the right-hand roof stay that carries the turbo water return. */
function clampBracket(): Part {
  const ring = lathe(
    frameAt([640, 456, 600], [1, 0, 0]),
    [
      [-7, 8.2],
      [-7, 12],
      [7, 12],
      [7, 8.2],
    ],
    32,
    true,
  );
  const arm = plate(frameAt([638.5, 484, 600], [1, 0, 0], [0, 0, 1]), roundedRectangle(44, 14, 4, 4), [], 3);
  return part('water-return-clamp', 'steel', ring, arm, bolt(frameAt([642, 486, 600], [1, 0, 0]), 6));
}
