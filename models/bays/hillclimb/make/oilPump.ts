import { boltCircle } from '../../../shapes/bolt.ts';
import { frameAt, moved } from '../../../shapes/frame.ts';
import { cylinder, lathe } from '../../../shapes/lathe.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { box } from '../../../shapes/roundedBox.ts';
import { portById } from './ports.ts';
import { bossOf } from './unions.ts';

/** The dry-sump pump: four stages bolted together beside the block, and the shaft forward to its pulley. */
export function oilPump(): Part[] {
  const at = frameAt([450, 165, 215], [1, 0, 0]);
  const stages = [0, 52, 104, 156].map((x) =>
    lathe(
      moved(at, x),
      [
        [0, 36],
        [2, 40],
        [7, 40],
        [8, 37],
        [43, 37],
        [44, 40],
        [49, 40],
        [51, 36],
      ],
      40,
    ),
  );
  const nose = lathe(
    moved(at, 0),
    [
      [-26, 14],
      [-24, 16],
      [-8, 18],
      [-4, 30],
      [0, 30],
    ],
    30,
  );
  const tail = lathe(
    moved(at, 207),
    [
      [-2, 36],
      [4, 36],
      [6, 30],
      [6, 18],
      [12, 16],
    ],
    32,
  );
  const studs = boltCircle(moved(at, 210), 30, 6, 6);
  const ports = ['pump-suction', 'pump-scavenge-out', 'pump-pressure'].map((id) => bossOf(portById(id)));
  const feet = [476, 560, 640].map((x) => box([x - 12, 110, 190], [x + 12, 150, 236], { corner: 6, edge: 3 }));
  const shaft = cylinder(frameAt([328, 165, 215], [1, 0, 0]), 110, 9, 20);
  const bearing = lathe(
    frameAt([352, 165, 215], [1, 0, 0]),
    [
      [0, 22],
      [3, 24],
      [24, 24],
      [27, 22],
    ],
    28,
  );
  const arm = box([354, 100, 205], [376, 150, 225], { corner: 4, edge: 3 });
  return [
    part('dry-sump-pump', 'machined', ...stages, nose, tail, studs, ...ports, ...feet),
    part('dry-sump-pump-shaft', 'steel', shaft, bearing, arm),
  ];
}
