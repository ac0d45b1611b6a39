import { describe, expect, it } from 'vitest';
import { dot } from '../../../../shared/base/vec3.ts';
import { backwardsEnd } from '../../../../shared/document/lay/backwardsEnd.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { straightCurve } from '../../../../shared/geometry/cubicCurve.ts';
import { clockBetween } from '../../../../shared/solve/ends/clock.ts';
import { sampleLay } from '../../../renderer/sampleBench.ts';

/** A straight hose of 100 mm along +X; outlet A straight up; outlet B so that the clock is `deg`; the seat of B 30 mm off the axis. */
function clocked(deg: number): Lay {
  // Looking along +X with +Z up, 3 o'clock is -Y; outlet A stands at 12, so B is a counter-clockwise from 12: towards +Y.
  const a = (deg * Math.PI) / 180;
  const out: [number, number, number] = [0, Math.sin(a), Math.cos(a)];
  const lay = sampleLay('x', { clock: { kind: 'angle', deg, toleranceDeg: 3 } });
  const b = { ...lay.ends.b, outletAxis: out, up: out, bendPoint: [120, 0, 0] as [number, number, number] };
  return { ...lay, ends: { ...lay.ends, b: { ...b, seatPoint: [120, 30 * out[1], 30 * out[2]] } } };
}

describe('backwardsEnd', () => {
  it.each([
    [270, 180, 60],
    [90, 180, 60],
    [30, 60, 30],
    [200, 40, 2 * 30 * Math.sin((20 * Math.PI) / 180)],
  ])('a = %d: END B is turned by %d degrees, its seat %d mm off (2 r |sin a|)', (deg, turned, off) => {
    const backwards = backwardsEnd(clocked(deg))!;
    expect(backwards.turnedDeg).toBeCloseTo(turned, 9);
    expect(backwards.seatOffMm).toBeCloseTo(off, 9);
  });

  it('is the hose whose clock reads 360 - a', () => {
    const lay = clocked(30);
    const { end, clockDeg } = backwardsEnd(lay)!;
    const line = straightCurve([0, 0, 0], [100, 0, 0]);
    expect(clockBetween(line, [0, 0, 1], lay.ends.b.up)).toBeCloseTo(30, 9);
    expect(clockBetween(line, [0, 0, 1], end.up)).toBeCloseTo(330, 9);
    expect(clockDeg).toBe(330);
    expect(dot(end.up, end.hoseAxis)).toBeCloseTo(0, 12);
  });

  it('is nothing where both readings are one hose, or the clock is free', () => {
    for (const deg of [0, 180, 359.9]) expect(backwardsEnd(clocked(deg))).toBeUndefined();
    expect(backwardsEnd(sampleLay('x'))).toBeUndefined();
  });
});
