import { describe, expect, it } from 'vitest';
import { degreesApart, degreesToRadians } from '../../../../shared/base/units.ts';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { fitEnd } from '../../../../shared/solve/ends/endPose.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();

function lay(clocks: { a?: number; b?: number }, more: Parameters<typeof oneRunProject>[3] = {}): Lay {
  const a = examplePort('a', { seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] });
  const b = examplePort('b', { seatPoint: [420, 160, 40], axis: [0, 0, 1], up: [1, 0, 0] });
  const end = exampleEnd(90, { shoulderToMouthMm: 10 });
  const clock = (deg: number | undefined) => (deg === undefined ? {} : { clockDeg: deg });
  const resolved = oneRunProject([a, b], [end, end], exampleHose({ minBendRadiusMm: 60 }), {
    a: { port: 'a', end: end.id, ...clock(clocks.a) },
    b: { port: 'b', end: end.id, ...clock(clocks.b) },
    ...more,
  });
  return layRun({ project: resolved.project, bay: BAY }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
}

/** What every lay must be: one unbroken hose from shoulder to shoulder, leaving both ends the way they stand. */
function expectUnbroken(l: Lay): void {
  const { points, arcLengthMm } = l.centreline;
  for (let i = 1; i < points.length; i++) {
    const step = arcLengthMm[i]! - arcLengthMm[i - 1]!;
    expect(distance(points[i]!, points[i - 1]!)).toBeLessThanOrEqual(step + 1e-6);
    expect(distance(points[i]!, points[i - 1]!)).toBeGreaterThan(0.98 * step);
  }
  expect(distance(points[0]!, l.ends.a.shoulderPoint)).toBeLessThan(1e-6);
  expect(distance(points.at(-1)!, l.ends.b.shoulderPoint)).toBeLessThan(1e-6);
}

describe('own clocks of angled ends', () => {
  it.each([
    [0, 180],
    [30, 150],
    [90, 270],
  ])('stand where the user put them: %d and %d', (a, b) => {
    const l = lay({ a, b });
    expectUnbroken(l);
    expect(degreesApart(l.ends.a.ownClockDeg, a)).toBeLessThan(1e-9);
    expect(degreesApart(l.ends.b.ownClockDeg, b)).toBeLessThan(1e-9);
    expect(l.ends.a.ownClockChosen || l.ends.b.ownClockChosen).toBe(false);
    const fitted = fitEnd(
      { seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] },
      exampleEnd(90, { shoulderToMouthMm: 10 }),
      degreesToRadians(a),
    );
    expect(distance(l.ends.a.mouthPoint, fitted.mouthPoint)).toBeLessThan(1e-9);
  });

  it('are chosen by the program where they are free, and bend the hose less than any stated pair tried', () => {
    const free = lay({});
    expectUnbroken(free);
    expect(free.ends.a.ownClockChosen && free.ends.b.ownClockChosen).toBe(true);
    for (const [a, b] of [
      [0, 180],
      [45, 200],
      [340, 160],
    ] as const)
      expect(lay({ a, b }).tautLengthMm).toBeGreaterThan(free.tautLengthMm - 0.5);
  });

  it('stay in place when a clamp holds the hose between them', () => {
    const clamp = {
      id: 'c',
      kind: 'clamp' as const,
      point: [210, 120, 60] as [number, number, number],
      axis: [1, 0.3, 0] as [number, number, number],
    };
    const l = lay(
      { a: 20 },
      { a: { port: 'a', end: 'end-90', clockDeg: 20 }, supports: [{ ...clamp, axis: [0.957826285, 0.287347886, 0] }] },
    );
    expectUnbroken(l);
    const held = l.supports[0]!;
    expect(distance(held.at.point, clamp.point)).toBeLessThan(1e-6);
  });
});
