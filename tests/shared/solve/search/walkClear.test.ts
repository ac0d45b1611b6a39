import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { CLEARANCE_PROOF_MM } from '../../../../shared/base/tolerances.ts';
import { anySquareTo, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type PathSegment, pathEnd, pathLengthMm, poseOnPath } from '../../../../shared/geometry/arcLinePath.ts';
import { type ClearSpace, isWalkClear, marginAt } from '../../../../shared/solve/search/clearSpace.ts';
import { analyticField, type Obstacle } from './analyticField.ts';

const BOUNDS = { min: [-400, -400, -400], max: [400, 400, 400] } as const;
const DIRECTION: Vec3 = [1, 0, 0];

/** The truth by looking every 0.05 mm. */
function leastMargin(space: ClearSpace, path: Parameters<typeof poseOnPath>[0]): number {
  let least = Number.POSITIVE_INFINITY;
  const steps = Math.ceil(pathLengthMm(path) / 0.05);
  for (let i = 0; i <= steps; i++) {
    const [x, y, z] = poseOnPath(path, (i * pathLengthMm(path)) / steps).point;
    least = Math.min(least, marginAt(space, x, y, z));
  }
  return least;
}

describe('whether a walk of several pieces is clear', () => {
  it('agrees with looking every 0.05 mm, to the proof', () => {
    const random = seededRandom(5);
    let clear = 0;
    for (let trial = 0; trial < 300; trial++) {
      const posts = Array.from({ length: 4 }, (): Obstacle => {
        return { kind: 'post', x: 300 * random() - 50, y: 200 * random() - 100, radius: 5 + 20 * random() };
      });
      const space: ClearSpace = { field: analyticField(posts, 15, BOUNDS), offsetMm: 0, plugs: [] };
      const start = { point: [0, 0, 0] as Vec3, direction: DIRECTION };
      const segments: PathSegment[] = [
        { kind: 'line', lengthMm: 60 * random() },
        { kind: 'arc', radiusMm: 60, angleRad: 1.2 * random(), normal: anySquareTo(DIRECTION) },
        { kind: 'line', lengthMm: 40 },
      ];
      const path = { start, segments };
      const end = pathEnd(path).point;
      const [a, b] = [marginAt(space, 0, 0, 0), marginAt(space, ...end)];
      if (a < 0 || b < 0) continue;
      const answer = isWalkClear(space, start, segments, a, b);
      const least = leastMargin(space, path);
      if (answer) clear++;
      if (answer) expect(least).toBeGreaterThanOrEqual(-CLEARANCE_PROOF_MM - 1e-9);
      else expect(least).toBeLessThan(0.03);
    }
    expect(clear).toBeGreaterThan(30);
  });
});
