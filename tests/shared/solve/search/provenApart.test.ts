import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { Cancelled, UNWATCHED } from '../../../../shared/base/watch.ts';
import type { ClearSpace } from '../../../../shared/solve/search/clearSpace.ts';
import { provenApart } from '../../../../shared/solve/search/provenApart.ts';
import { analyticField, type Obstacle } from './analyticField.ts';

const KEEP_MM = 19;
const BOUNDS = { min: [-300, -300, -300], max: [300, 300, 300] } as const satisfies ClearSpace['field']['bounds'];
const START: Vec3 = [-200, 30, 10];
const GOAL: Vec3 = [200, -40, 20];

function spaceOf(obstacles: readonly Obstacle[], keepMm = KEEP_MM): ClearSpace {
  return { field: analyticField(obstacles, keepMm, BOUNDS), offsetMm: 0, plugs: [] };
}

/** A wall right across, with a round hole that is so much too narrow, mm, for the hose and all that it keeps. */
function holeShortBy(shortMm: number, y = 37, z = -61): ClearSpace {
  return spaceOf([{ kind: 'wall', x: 3, holes: [{ y, z, radius: KEEP_MM - shortMm }] }]);
}

describe('places that nothing joins', () => {
  it('are told apart by a wall without a hole, and by one whose hole lacks 2 mm and more', () => {
    expect(provenApart(spaceOf([{ kind: 'wall', x: 3, holes: [] }]), [START], [GOAL], UNWATCHED)).toBe(true);
    for (const shortMm of [2, 3, 5, 8, 12])
      for (const [y, z] of [
        [37, -61],
        [0, 0],
        [-122.4, 88.1],
      ] as const)
        expect([shortMm, y, provenApart(holeShortBy(shortMm, y, z), [START], [GOAL], UNWATCHED)]).toEqual([
          shortMm,
          y,
          true,
        ]);
  });

  it('are never told of where something does join them: a hole with a hair to spare, however it lies to the cells', () => {
    for (let i = 0; i < 40; i++) {
      const [y, z] = [-150 + 7.3 * i, 140 - 6.1 * i];
      expect(provenApart(holeShortBy(-0.01, y, z), [START], [GOAL], UNWATCHED)).toBe(false);
    }
    expect(provenApart(spaceOf([]), [START], [GOAL], UNWATCHED)).toBe(false);
  });

  it('may be one of several on either side: one that is joined is enough', () => {
    const shut: Obstacle = { kind: 'wall', x: 3, holes: [] };
    const beside: Vec3 = [-150, 0, 0];
    expect(provenApart(spaceOf([shut]), [START], [GOAL, beside], UNWATCHED)).toBe(false);
    expect(provenApart(spaceOf([shut]), [START, beside], [GOAL], UNWATCHED)).toBe(true);
  });

  it('near which the hose is held are told apart by the same walls, and joined by a hole narrow for all but what is held there', () => {
    const heldBy = (obstacle: Obstacle, held: readonly Vec3[]): ClearSpace => ({
      field: analyticField([obstacle], KEEP_MM, BOUNDS, held),
      offsetMm: 0,
      plugs: [],
    });
    for (let i = 0; i < 6; i++) {
      const [y, z] = [-120 + 38.6 * i, 110 - 35.4 * i];
      const shut: Obstacle = { kind: 'wall', x: 3, holes: [] };
      const hole: Obstacle = { kind: 'wall', x: 3, holes: [{ y, z, radius: 12 }] };
      // Beyond 38 mm the whole 19 mm are kept; 15 mm from the place 7.5 mm are, and the hole leaves 12.
      const far: readonly Vec3[] = [START, GOAL, [3 - 39, y, z + 30]];
      const near: readonly Vec3[] = [START, GOAL, [3 - 12, y, z + 9]];
      const isApart = (obstacle: Obstacle, held: readonly Vec3[]): boolean =>
        provenApart(heldBy(obstacle, held), [START], [GOAL], UNWATCHED);
      expect([isApart(shut, far), isApart(shut, near)]).toEqual([true, true]);
      expect([isApart(hole, far), isApart(hole, near)]).toEqual([true, false]);
    }
  });

  it('can be left', () => {
    const watch = { ...UNWATCHED, isCancelled: () => true };
    expect(() => provenApart(holeShortBy(5), [START], [GOAL], watch)).toThrow(Cancelled);
  });
});
