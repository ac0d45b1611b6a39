import { describe, expect, it } from 'vitest';
import { lerp } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';
import { bruteForceDistance } from '../../../oracles/bruteForceDistance.ts';

/**
 * A 90 degree swivel end on a floor, its far end toward +x; a block stands on the floor just where the elbow would lie at
 * the clock that points there, low enough that the hose itself would pass over it.
 */
const FLOOR = { min: [-300, -400, -20], max: [900, 400, 0] } as const;
const BLOCK = { min: [30, -60, 0], max: [80, 60, 48] } as const;

describe('an end that the program turns', () => {
  it.each([false, true])('stands clear of what is round its port (block there: %s)', (blocked) => {
    const mesh = meshOfBlocks(blocked ? [FLOOR, BLOCK] : [FLOOR]);
    const bay = buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
    const a = examplePort('a', { seatPoint: [0, 0, 15], axis: [0, 0, 1], up: [1, 0, 0] });
    const b = examplePort('b', { seatPoint: [520, 0, 160], axis: [-1, 0, 0] });
    const elbow = exampleEnd(90, { seatToBendMm: 35, bendToShoulderMm: 40, shoulderToMouthMm: 15 });
    const straight = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
    const hose = exampleHose({ insideDiameterMm: 8, outsideDiameterMm: 14, minBendRadiusMm: 50 });
    const resolved = oneRunProject([a, b], [elbow, straight], hose, {});
    const lay = layRun({ project: resolved.project, bay }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
    expect(lay.outcome).toBe('laid');
    const { bendPoint, mouthPoint, hoseAxis, seatPoint } = lay.ends.a;
    // Towards the far end: within 45 degrees of it.
    if (!blocked) expect(hoseAxis[0]).toBeGreaterThan(Math.SQRT1_2);
    for (let i = 0; i <= 20; i++) {
      const p = lerp(bendPoint, mouthPoint, i / 20);
      const asked = Math.min(7 + 12, 0.5 * Math.hypot(p[0] - seatPoint[0], p[1] - seatPoint[1], p[2] - seatPoint[2]));
      expect(bruteForceDistance(mesh, p)).toBeGreaterThan(asked - 0.5);
    }
  });
});
