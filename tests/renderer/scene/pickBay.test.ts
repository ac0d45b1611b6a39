import { describe, expect, it } from 'vitest';
import { aimAt } from '../../../renderer/scene/aimAt.ts';
import type { OpenDocument } from '../../../renderer/state/documentStore.ts';
import { seededRandom } from '../../../shared/base/random.ts';
import { unit, type Vec3 } from '../../../shared/base/vec3.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** A sheet 300 by 200 mm, in no whole coordinates, and a lid 80 mm over it. */
const FLOOR_Z = -13.7;
const LID_Z = FLOOR_Z + 80;

function sheet(z: number): number[] {
  return [0, 0, z, 300, 0, z, 300, 200, z, 0, 200, z];
}

const BAY: Bay = {
  positions: new Float32Array([...sheet(FLOOR_Z), ...sheet(LID_Z)]),
  indices: new Uint32Array([0, 1, 2, 0, 2, 3, 4, 5, 6, 4, 6, 7]),
  parts: [
    { name: 'floor', firstTriangle: 0, triangleCount: 2, skin: 'plain', body: 'chassis' },
    { name: 'lid', firstTriangle: 2, triangleCount: 2, skin: 'plain', body: 'chassis' },
  ],
};

/** Looks from above, each at a place of the floor. */
function looks(): { from: Vec3; along: Vec3 }[] {
  const random = seededRandom(5);
  const between = (low: number, high: number): number => low + random() * (high - low);
  return Array.from({ length: 200 }, () => {
    const from: Vec3 = [between(-400, 700), between(-400, 600), between(300, 900)];
    const at: Vec3 = [between(5, 295), between(5, 195), FLOOR_Z];
    return { from, along: unit([at[0] - from[0], at[1] - from[1], at[2] - from[2]]) };
  });
}

const floor = Math.fround(FLOOR_Z);

describe('a bay cut open', () => {
  it('is hit on a floor that lies in the lowest side of the box, wherever it is looked at', () => {
    const box = { low: [0, 0, floor], high: [300, 200, 20] } as const;
    for (const look of looks()) expect(aimAt(BAY, look, {}, { plane: null, box })?.part).toBe('floor');
  });

  it('is hit on a face that lies in the cut itself, by box and by plane', () => {
    const box = { low: [0, 0, -100], high: [300, 200, floor] } as const;
    const plane = { point: [0, 0, floor], away: [0, 0, 1] } as const;
    for (const look of looks()) {
      expect(aimAt(BAY, look, {}, { plane: null, box })?.part).toBe('floor');
      expect(aimAt(BAY, look, {}, { plane, box: null })?.part).toBe('floor');
    }
  });

  it('lets the look through what is cut away, and through all of it where all is', () => {
    const under = { low: [0, 0, -100], high: [300, 200, floor - 0.1] } as const;
    for (const look of looks()) {
      expect(aimAt(BAY, look, {}, { plane: null, box: null })?.part).toBeDefined();
      expect(aimAt(BAY, look, {}, { plane: null, box: under })).toBeNull();
    }
  });
});
