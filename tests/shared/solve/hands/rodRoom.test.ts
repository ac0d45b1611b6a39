import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { distance, lerp, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { nearestDistance } from '../../../../shared/geometry/bvh.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { isRodFree } from '../../../../shared/solve/hands/rodRoom.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';

const bay = buildBayIndex(
  meshOfBlocks([
    { min: [0, 0, 0], max: [100, 100, 10] },
    { min: [0, 0, 60], max: [20, 100, 100] },
  ]),
  () => PLAIN_SKIN,
  UNWATCHED,
);
const bvhs = bay.skins.map(({ bvh }) => bvh);

it('passes a wall it does not touch by half a millimetre, and none that it touches', () => {
  const over = (z: number): boolean => isRodFree({ from: [30, 50, z], to: [90, 50, z], radiusMm: 8 }, bvhs);
  expect([over(18.51), over(25), over(17.99), over(10)]).toEqual([true, true, false, false]);
});

it('agrees with points tried close together, but for half a millimetre', () => {
  const random = seededRandom(4);
  const place = (): Vec3 => [160 * random() - 30, 160 * random() - 30, 160 * random() - 30];
  let [free, touching] = [0, 0];
  for (let n = 0; n < 400; n++) {
    const [from, to, radiusMm] = [place(), place(), 2 + 12 * random()];
    const steps = Math.ceil(distance(from, to) / 0.1);
    const least = Math.min(
      ...Array.from({ length: steps + 1 }, (_, k) => {
        const [x, y, z] = lerp(from, to, k / steps);
        return Math.min(...bvhs.map((bvh) => nearestDistance(bvh, x, y, z, Infinity)));
      }),
    );
    const told = isRodFree({ from, to, radiusMm }, bvhs);
    if (least <= radiusMm) expect(told).toBe(false);
    if (least > radiusMm + 0.6) expect(told).toBe(true);
    if (told) free++;
    else touching++;
  }
  expect(Math.min(free, touching)).toBeGreaterThan(50);
});

it('keeps clear of balls exactly', () => {
  const ball = { centre: [50, 50, 200], radiusMm: 6, thing: { kind: 'run', id: 'r2' } } as const;
  const at = (z: number): boolean => isRodFree({ from: [0, 50, z], to: [100, 50, z], radiusMm: 4 }, bvhs, [ball]);
  expect([at(189.99), at(190.01)]).toEqual([true, false]);
  expect(isRodFree({ from: [61, 50, 200], to: [90, 50, 200], radiusMm: 4 }, bvhs, [ball])).toBe(true);
});
