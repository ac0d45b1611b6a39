import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { measureEndRoom } from '../../../../shared/solve/layRun/measureEndRoom.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, examplePort } from '../../../arbitraries/rig.ts';

/** A square end on a floor, lying along +x at 35 mm above it, collar 22 mm; a wall across its way. */
function room(wallFrom: number) {
  const mesh = meshOfBlocks([
    { min: [-200, -200, -20], max: [200, 200, 0] },
    { min: [wallFrom, -200, 0], max: [wallFrom + 20, 200, 200] },
  ]);
  const bay = buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
  const end = exampleEnd(90, { seatToBendMm: 35, bendToShoulderMm: 40, shoulderToMouthMm: 15 });
  const port = examplePort('a', { seatPoint: [0, 0, 0.001], axis: [0, 0, 1], up: [1, 0, 0] });
  const setting = { port: { seatPoint: port.seatPoint, axis: port.axis, up: port.up }, end, clockRad: 0, turns: false };
  return measureEndRoom(setting, 0, bay);
}

describe('measureEndRoom', () => {
  it("is the floor's 35 mm less the collar's 11 where nothing is nearer", () => {
    expect(room(190)?.roomMm).toBeCloseTo(24, 2);
    expect(room(190)?.part).toBe('block-0');
  });

  it('is the way to a wall before the mouth less the collar, and negative where the mouth stands in it', () => {
    // The mouth is 55 mm out; a wall at 70 leaves 15 mm, 4 mm past the collar's radius.
    expect(room(70)?.roomMm).toBeCloseTo(4, 2);
    expect(room(70)?.part).toBe('block-1');
    expect(room(60)?.roomMm).toBeCloseTo(-6, 2);
  });
});
