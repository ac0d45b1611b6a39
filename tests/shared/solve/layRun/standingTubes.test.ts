import { describe, expect, it } from 'vitest';
import type { ResolvedRun } from '../../../../shared/document/project/resolve.ts';
import type { Run } from '../../../../shared/document/project/schema.ts';
import { standingTubes } from '../../../../shared/solve/layRun/standingTubes.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const ANGLED = exampleEnd(45, { seatToBendMm: 30, bendToShoulderMm: 20, shoulderToMouthMm: 15 });

function made(end: typeof STRAIGHT, more: Partial<Run> = {}) {
  const a = examplePort('a', { seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1] });
  const b = examplePort('b', { seatPoint: [600, 0, 0], axis: [-1, 0, 0], up: [0, 0, 1] });
  const { project, runs } = oneRunProject([a, b], [end, STRAIGHT], HOSE, more);
  return { project, run: runs[0] as ResolvedRun };
}

describe('what stands on the ports of a run that does not lie yet', () => {
  it('is a straight end whole, and the straight hose that the rule wants beyond its mouth', () => {
    const { project, run } = made(STRAIGHT);
    const [body, tail, ...far] = standingTubes(project, run);
    expect(body!.points[0]).toEqual([0, 0, 0]);
    expect(body!.points.at(-1)).toEqual([40, 0, 0]);
    expect(body!.radiusMm).toBe(11);
    // Twice its outside diameter of hose is led straight (rule straight-tail).
    expect(tail!.points).toEqual([
      [40, 0, 0],
      [72, 0, 0],
    ]);
    expect(tail!.radiusMm).toBe(8);
    expect(far.map((t) => t.points[0]![0])).toEqual([600, 560]);
    expect(standingTubes(project, run).every((t) => t.standing === true && t.run === run.run.id)).toBe(true);
  });

  it('is, of an end that still turns, what lies on the axis of its port', () => {
    const { project, run } = made(ANGLED);
    const near = standingTubes(project, run).filter((t) => t.points[0]![0] < 300);
    expect(near.map((t) => t.points)).toEqual([
      [
        [0, 0, 0],
        [30, 0, 0],
      ],
    ]);
  });

  it('is the whole of an angled end whose clock is stated', () => {
    const end = { port: 'a', end: ANGLED.id, clockDeg: 0 };
    const { project, run } = made(ANGLED, { a: end, b: { port: 'b', end: STRAIGHT.id } });
    const near = standingTubes(project, run).filter((t) => t.points[0]![0] < 300);
    expect(near).toHaveLength(2);
    // Turned up by 45 degrees at 12 o'clock.
    const mouth = near[0]!.points.at(-1)!;
    expect(mouth[2]).toBeCloseTo(35 * Math.SQRT1_2, 9);
  });

  it('is nothing to a run that is screwed on the same port', () => {
    const { project, run } = made(STRAIGHT);
    expect(standingTubes(project, run, run)).toEqual([]);
  });
});
