import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, distance, scale, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { type ArcLinePath, pathEnd, samplePath } from '../../../../shared/geometry/arcLinePath.ts';
import type { ClearSpace } from '../../../../shared/solve/search/clearSpace.ts';
import { pushClear } from '../../../../shared/solve/search/pushClear.ts';
import { type CarvedKind, carvedBay } from '../../../arbitraries/carvedBays.ts';
import { carvedProblem } from '../../../arbitraries/carvedSearch.ts';
import { analyticField } from './analyticField.ts';

/** The line with a smooth shift of at most `mostMm`, none at its ends: three sine waves of random direction. */
function shifted(line: readonly Vec3[], mostMm: number, seed: number): Vec3[] {
  const random = seededRandom(seed);
  const waves = [1, 2, 3].map((n) => ({ n, by: [random() - 0.5, random() - 0.5, random() - 0.5] as Vec3 }));
  const shifts = line.map((_, i) =>
    waves.reduce<Vec3>(
      (sum, { n, by }) => addScaled(sum, by, Math.sin((n * Math.PI * i) / (line.length - 1))),
      [0, 0, 0],
    ),
  );
  const most = Math.max(...shifts.map((s) => Math.hypot(...s)));
  return line.map((p, i) => addScaled(p, shifts[i]!, mostMm / most));
}

function expectSound(path: ArcLinePath | undefined, radiusMm: number, marginMm: (p: Vec3) => number): void {
  expect(path).toBeDefined();
  for (const segment of path!.segments)
    if (segment.kind === 'arc') expect(segment.radiusMm).toBeGreaterThanOrEqual(radiusMm);
  // A slow look beside the proof: margins at every millimetre.
  for (const { point } of samplePath(path!, 1)) expect(marginMm(point)).toBeGreaterThan(-0.1);
}

describe('a curve that a tube was carved round, shifted', () => {
  const seeds: readonly (readonly [number, CarvedKind])[] = [
    [27, 'walls'],
    [57, 'walls'],
    [51, 'cluttered'],
    [112, 'walls'],
    [123, 'pipe'],
  ];
  for (const [seed, kind] of seeds) {
    it(`finds its way back through ${kind} ${seed} from 6 mm off`, () => {
      const bay = carvedBay(seed);
      expect(bay.kind).toBe(kind);
      const { from, to, field } = carvedProblem(bay);
      if (from.kind !== 'held' || to.kind !== 'held') throw new Error('carved ends are held');
      const space: ClearSpace = { field, offsetMm: -0.1, plugs: [] };
      const truth = samplePath(bay.between, 4).map(({ point }) => point);
      const { path } = pushClear(space, from.pose, to.pose, shifted(truth, 6, seed), bay.minRadiusMm, UNWATCHED);
      expectSound(path, bay.minRadiusMm, ([x, y, z]) => field.marginMm(x, y, z, 20));
      expect(distance(pathEnd(path!).point, to.pose.point)).toBeLessThan(0.01);
      expect(distance(pathEnd(path!).direction, to.pose.direction)).toBeLessThan(1e-4);
    });
  }
});

describe('a plane wall with one round hole', () => {
  const KEEP_MM = 12;
  const ROOM_MM = 1;
  const RADIUS_MM = 80;
  const field = analyticField([{ kind: 'wall', x: 0, holes: [{ y: 0, z: 0, radius: KEEP_MM + ROOM_MM }] }], KEEP_MM, {
    min: [-400, -300, -300],
    max: [400, 300, 300],
  });
  const space: ClearSpace = { field, offsetMm: 0, plugs: [] };
  const along: Vec3 = [1, 0, 0];

  /** Two arcs and back: an end beside the hole's axis by `asideMm` needs no more than this ahead of the wall. */
  const aheadMm = (asideMm: number): number => Math.sqrt(4 * RADIUS_MM * asideMm - asideMm * asideMm);

  for (const asideMm of [20, 60, 110]) {
    it(`is passed through its middle from ${asideMm} mm aside`, () => {
      const farMm = 1.15 * aheadMm(asideMm) + 20;
      const start = { point: [-farMm, asideMm, 0] as Vec3, direction: along };
      const goal = { point: [farMm, 0, asideMm] as Vec3, direction: along };
      const line: Vec3[] = [start.point, [-60, 2, 3], [0, 4, -3], [60, -3, 2], goal.point];
      const { path } = pushClear(space, start, goal, line, RADIUS_MM, UNWATCHED);
      expectSound(path, RADIUS_MM, ([x, y, z]) => field.marginMm(x, y, z, 50));
      // All that is free in the plane of the wall is a disc of ROOM_MM: known without any search.
      const inWall = samplePath(path!, 0.1).filter(({ point }) => Math.abs(point[0]) < 0.06);
      expect(inWall.length).toBeGreaterThan(0);
      for (const { point } of inWall) expect(Math.hypot(point[1], point[2])).toBeLessThanOrEqual(ROOM_MM + 0.11);
    });
  }

  it('is not passed where two arcs do not fit before it', () => {
    const asideMm = 110;
    // Half of what two arcs take: no curve of this radius comes from there to the middle and on along the axis.
    const start = { point: [-0.5 * aheadMm(asideMm), asideMm, 0] as Vec3, direction: along };
    const goal = { point: [200, 0, 0] as Vec3, direction: along };
    const held = { ...goal, point: [6, 0, 0] as Vec3 };
    const line: Vec3[] = [start.point, [0, 0, 0], held.point];
    const pushed = pushClear(space, start, held, line, RADIUS_MM, UNWATCHED);
    expect(pushed.path).toBeUndefined();
    expect(pushed.worst.every(Number.isFinite)).toBe(true);
    expect(pushed.heldAt).toHaveLength(2);
    for (const place of pushed.heldAt) expect(distance(place, start.point)).toBeLessThan(2 * RADIUS_MM);
  });

  it('turned round, is passed as well', () => {
    const start = { point: [250, 60, 0] as Vec3, direction: scale(along, -1) };
    const goal = { point: [-250, 0, -60] as Vec3, direction: scale(along, -1) };
    const { path } = pushClear(space, start, goal, [start.point, [0, 3, 3], goal.point], RADIUS_MM, UNWATCHED);
    expectSound(path, RADIUS_MM, ([x, y, z]) => field.marginMm(x, y, z, 50));
  });
});
