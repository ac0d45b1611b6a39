import { describe, expect, it } from 'vitest';
import { distance, scale, type Vec3 } from '../../../../shared/base/vec3.ts';
import { connectionPath, connectPoses, connectWithShortTurns } from '../../../../shared/geometry/arcLineConnector.ts';
import {
  type Pose,
  pathEnd,
  pathLengthMm,
  poseOnPath,
  tightestRadiusMm,
} from '../../../../shared/geometry/arcLinePath.ts';
import { shortestFreePath } from '../../../../shared/geometry/freeShortest/shortestFreePath.ts';
import { candidateOf } from '../../../../shared/solve/search/candidate.ts';
import { type ClearSpace, isPathClear } from '../../../../shared/solve/search/clearSpace.ts';
import { withNearShortcuts } from '../../../../shared/solve/search/nearShortcuts.ts';
import { posePairs } from '../../../arbitraries/posePairs.ts';
import { analyticField, type Obstacle } from './analyticField.ts';

const RADIUS = 75;
const BOUNDS = { min: [-900, -900, -900], max: [900, 900, 900] } as const;

function spaceWith(obstacles: readonly Obstacle[]): ClearSpace {
  return { field: analyticField(obstacles, 15, BOUNDS), offsetMm: 0, plugs: [] };
}

/** Near pairs whose arc-straight-arc connection has a turn over pi and is much longer than need be. */
const LOOPED = posePairs(91, 60).flatMap(({ from, to, apart }) => {
  const [a, b] = [from, to].map(({ point, direction }): Pose => ({ point: scale(point, RADIUS), direction })) as [
    Pose,
    Pose,
  ];
  const long = connectWithShortTurns(a, b, RADIUS) || apart > 3 ? undefined : connectPoses(a, b, RADIUS);
  const free = long && shortestFreePath(a, b, RADIUS);
  if (!long || !free || long.lengthMm < 1.2 * pathLengthMm(free)) return [];
  return [{ to: b, long: candidateOf(connectionPath(a, b, long), 0, 0), free }];
});

describe('loops between near places', () => {
  it('become the shortest ones where nothing stands in the way', () => {
    expect(LOOPED.length).toBeGreaterThan(8);
    for (const { long, free } of LOOPED.slice(0, 8)) {
      const { lengthMm } = withNearShortcuts(spaceWith([]), long, RADIUS);
      expect(lengthMm).toBeLessThan(1.0001 * pathLengthMm(free));
    }
  });

  it('keep clear, keep their ends and the radius, and never get longer, with a ball in the middle of the shortest', () => {
    let shorter = 0;
    for (const { to, long, free } of LOOPED) {
      const centre: Vec3 = poseOnPath(free, pathLengthMm(free) / 2).point;
      const space = spaceWith([{ kind: 'ball', centre, radius: 15 }]);
      if (!isPathClear(space, long.path)) continue;
      const found = withNearShortcuts(space, long, RADIUS);
      if (found.lengthMm < long.lengthMm) shorter++;
      expect(found.lengthMm).toBeLessThanOrEqual(long.lengthMm);
      expect(isPathClear(space, found.path)).toBe(true);
      expect(distance(pathEnd(found.path).point, to.point)).toBeLessThan(1e-5);
      expect(distance(pathEnd(found.path).direction, to.direction)).toBeLessThan(1e-6);
      expect(tightestRadiusMm(found.path)).toBeGreaterThanOrEqual(RADIUS);
    }
    expect(shorter).toBeGreaterThan(4);
  });
});
