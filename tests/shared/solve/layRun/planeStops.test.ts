import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import {
  addScaled,
  anySquareTo,
  cross,
  dot,
  scale,
  sub,
  turnAbout,
  unit,
  type Vec3,
} from '../../../../shared/base/vec3.ts';
import type { Pose } from '../../../../shared/geometry/arcLinePath.ts';
import { planeStops } from '../../../../shared/solve/layRun/planeStops.ts';
import type { EndChoice } from '../../../../shared/solve/search/problem.ts';
import { anyDirection } from '../../../arbitraries/posePairs.ts';

const held = (point: Vec3, direction: Vec3): EndChoice => ({ kind: 'held', pose: { point, direction } });

/** An end bent by `bendRad` that turns about `axis` through `seat`; the hose leaves at the end of two legs of 30 mm. */
function turning(seat: Vec3, axis: Vec3, bendRad: number): EndChoice & { kind: 'turning' } {
  const aside = anySquareTo(axis);
  return {
    kind: 'turning',
    poseAt: (clockRad): Pose => {
      const out = turnAbout(aside, axis, clockRad);
      const direction = unit(addScaled(scale(axis, Math.cos(bendRad)), out, Math.sin(bendRad)));
      return { point: addScaled(addScaled(seat, axis, 30), direction, 30), direction };
    },
  };
}

/** Sine of the angle by which the last direction leaves the plane of the first and the line between; 0 = one plane. */
function outOfPlane(from: Pose, to: Pose): number {
  const across = unit(sub(to.point, from.point));
  return Math.abs(dot(cross(from.direction, across), to.direction));
}

describe('planeStops', () => {
  it('takes held stops in one plane as they are, with the normal of that plane', () => {
    const [stops, ...more] = planeStops(held([0, 0, 0], [1, 0, 0]), held([200, 100, 0], [0, 1, 0]), 50);
    expect(more).toEqual([]);
    expect(Math.abs(stops!.normal![2])).toBeCloseTo(1, 12);
  });

  it('answers nothing for held stops that lie more than 3 degrees out of plane, and something under that', () => {
    const at = (deg: number): EndChoice => {
      const rad = (deg * Math.PI) / 180;
      return held([200, 0, 0], [0, Math.cos(rad), Math.sin(rad)]);
    };
    expect(planeStops(held([0, 0, 0], [0, 1, 0]), at(3.2), 50)).toEqual([]);
    expect(planeStops(held([0, 0, 0], [0, 1, 0]), at(2.8), 50)).toHaveLength(1);
  });

  it('leaves the plane open where both stops point along the line between them', () => {
    const [stops] = planeStops(held([0, 0, 0], [1, 0, 0]), held([300, 0, 0], [1, 0, 0]), 50);
    expect(stops!.normal).toBeUndefined();
  });

  it('finds both clocks of a 90 degree end whose axis crosses the line of the other at right angles', () => {
    // Axis z at the origin, the goal 300 mm along x and pointing along z: only an outlet along +x or -x lies in its plane.
    const found = planeStops(turning([0, 0, -30], [0, 0, 1], Math.PI / 2), held([300, 0, 0], [0, 0, 1]), 50);
    const outlets = found.map(({ from }) => from.pose.direction);
    expect(outlets).toHaveLength(2);
    for (const [, y, z] of outlets) expect(Math.hypot(y, z)).toBeLessThan(1e-9);
    expect(outlets.map(([x]) => Math.sign(x)).sort()).toEqual([-1, 1]);
    // The shorter way first: the outlet that looks towards the goal.
    expect(outlets[0]![0]).toBeCloseTo(1, 9);
  });

  it.each([1, 2, 3, 4, 5, 6])('finds every clock that a fine look round finds, seeded ends %d', (seed) => {
    const random = seededRandom(seed);
    const end = turning([0, 0, 0], anyDirection(random), 0.4 + random());
    const goal = held([250 + 100 * random(), 80 * random(), 60 * random()], anyDirection(random));
    if (goal.kind !== 'held') throw new Error('held');
    const signed = (clockRad: number): number => {
      const from = end.poseAt(clockRad);
      return dot(cross(from.direction, unit(sub(goal.pose.point, from.point))), goal.pose.direction);
    };
    const step = (2 * Math.PI) / 20_000;
    const slow: number[] = [];
    for (let i = 0; i < 20_000; i++)
      if (signed(i * step) <= 0 !== signed((i + 1) * step) <= 0) slow.push((i + 0.5) * step);
    const found = planeStops(end, goal, 50)
      .map(({ from }) => from.clockRad)
      .sort((a, b) => a - b);
    expect(found).toHaveLength(Math.min(3, slow.length));
    for (const clock of found) expect(Math.min(...slow.map((s) => Math.abs(s - clock)))).toBeLessThan(step);
  });

  it.each([7, 8, 9])('stands both of two swivel ends in one plane, seeded ends %d', (seed) => {
    const random = seededRandom(seed);
    const from = turning([0, 0, 0], anyDirection(random), 0.8);
    const to = turning([300, 50, 20], anyDirection(random), 1.2);
    const found = planeStops(from, to, 50);
    expect(found.length).toBeGreaterThan(0);
    for (const stops of found) {
      expect(outOfPlane(stops.from.pose, stops.to.pose)).toBeLessThan(1e-6);
      expect(Math.abs(dot(stops.normal!, stops.from.pose.direction))).toBeLessThan(1e-6);
      expect(Math.abs(dot(stops.normal!, stops.to.pose.direction))).toBeLessThan(1e-6);
    }
  });

  it('offers no clock at which an end does not stand clear', () => {
    const end = turning([0, 0, -30], [0, 0, 1], Math.PI / 2);
    const shy: EndChoice = { ...end, standsClear: (clock) => end.poseAt(clock).direction[0] < 0 };
    const [only, ...more] = planeStops(shy, held([300, 0, 0], [0, 0, 1]), 50);
    expect(more).toEqual([]);
    expect(only!.from.pose.direction[0]).toBeCloseTo(-1, 9);
  });
});
