import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildContactField } from '../../../../shared/solve/bay/contactField.ts';
import { buildTubeField, type Tube } from '../../../../shared/solve/bay/tubeField.ts';
import { ROOM_TOLD_EXACTLY_MM } from '../../../../shared/solve/rod/rodProblem.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';

const BLOCK = { min: [0, 0, 0], max: [200, 150, 80] } as const;
const TUBE: Tube = {
  run: 'other',
  points: [
    [250, 0, 40],
    [250, 150, 120],
  ],
  radiusMm: 7,
};
const OUTSIDE_RADIUS_MM = 9;

/** Outside of the block: how far from it. */
function toBlock(p: Vec3): number {
  const beyond = (k: 0 | 1 | 2): number => Math.max(BLOCK.min[k] - p[k], 0, p[k] - BLOCK.max[k]);
  return Math.hypot(beyond(0), beyond(1), beyond(2));
}

function toTube(p: Vec3): number {
  const [a, b] = TUBE.points as [Vec3, Vec3];
  const along = (t: number): Vec3 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
  return Math.min(...Array.from({ length: 2001 }, (_, i) => distance(p, along(i / 2000)))) - TUBE.radiusMm;
}

it('tells small gaps exactly and larger ones from below, to a block and to another hose', () => {
  const bay = buildBayIndex(meshOfBlocks([BLOCK]), () => PLAIN_SKIN, UNWATCHED);
  const field = buildContactField(bay, buildTubeField([TUBE]), OUTSIDE_RADIUS_MM, []);
  const random = seededRandom(4);
  const gap = { gapMm: 0, nx: 0, ny: 0, nz: 0 };
  let near = 0;
  for (let i = 0; i < 3000; i++) {
    const p: Vec3 = [-30 + 320 * random(), -30 + 210 * random(), -30 + 180 * random()];
    if (toBlock(p) === 0) continue;
    const exactMm = Math.min(toBlock(p), toTube(p)) - OUTSIDE_RADIUS_MM;
    field.gapAt(...p, gap);
    if (exactMm <= ROOM_TOLD_EXACTLY_MM) {
      near++;
      expect(gap.gapMm).toBeCloseTo(exactMm, 3);
      // Along its direction the gap opens as fast as one moves; two things as near, or an edge of the block, leave it open which.
      const stepMm = 0.01;
      const moved: Vec3 = [p[0] + stepMm * gap.nx, p[1] + stepMm * gap.ny, p[2] + stepMm * gap.nz];
      const opened = Math.min(toBlock(moved), toTube(moved)) - OUTSIDE_RADIUS_MM - exactMm;
      if (Math.abs(toBlock(p) - toTube(p)) > 1) expect(opened / stepMm).toBeGreaterThan(0.99);
    } else {
      expect(gap.gapMm).toBeGreaterThan(ROOM_TOLD_EXACTLY_MM);
      expect(gap.gapMm).toBeLessThanOrEqual(exactMm + 1e-3);
    }
  }
  expect(near).toBeGreaterThan(300);
});
