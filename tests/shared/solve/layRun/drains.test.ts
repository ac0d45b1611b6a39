import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();
const END = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15, dash: 10 });

/** A turbo outlet facing down at 400 mm, and a port it drains to: 300 mm lower, `across` to the side, facing `axis`. */
function drain(across: number, axis: [number, number, number], turned = false): { lay: Lay; stops: string[] } {
  const outlet = examplePort('outlet', { seatPoint: [0, 0, 400], axis: [0, 0, -1], up: [1, 0, 0], dash: 10 });
  const sump = examplePort('sump', { seatPoint: [across, 0, 100], axis, up: [0, 1, 0], dash: 10 });
  const hose = exampleHose({ dash: 10, minBendRadiusMm: 55 });
  const ports: [typeof outlet, typeof sump] = turned ? [sump, outlet] : [outlet, sump];
  const resolved = oneRunProject(ports, [END, END], hose, {
    service: { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 2, temperatureC: 120 },
  });
  const lay = layRun({ project: resolved.project, bay: BAY }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
  const stops = runChecks(resolved, [lay]).filter((f) => f.severity === 'stop');
  return { lay, stops: stops.map((f) => f.message) };
}

/** Least slope from chord to chord, degrees below level going from the higher end to the lower. */
function leastSlopeDeg({ centreline: { points } }: Lay): number {
  const downward = points[0]![2] > points.at(-1)![2] ? points : [...points].reverse();
  const slopes = downward.slice(1).map((p, i) => {
    const q = downward[i]!;
    return Math.asin((q[2] - p[2]) / Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]));
  });
  return (Math.min(...slopes) * 180) / Math.PI;
}

describe('a turbo drain', () => {
  it.each([
    [60, [0, 0, 1]],
    [120, [-0.5, 0, 0.866]],
  ] as [number, [number, number, number]][])('falls all the way to a port %d mm aside', (across, axis) => {
    const { lay, stops } = drain(across, axis);
    expect(lay.outcome).toBe('laid');
    expect(leastSlopeDeg(lay)).toBeGreaterThan(5 - 0.2);
    expect(stops).toEqual([]);
  });

  it('falls whichever end is called END A', () => {
    const { lay } = drain(120, [-0.5, 0, 0.866], true);
    expect(lay.outcome).toBe('laid');
    expect(leastSlopeDeg(lay)).toBeGreaterThan(5 - 0.2);
  });

  it('into a port that faces down is no clean lay, and says so', () => {
    const { lay, stops } = drain(150, [0, 0, -1]);
    expect(lay.outcome).toBe('near-miss');
    expect(lay.reason).toMatch(/fall/);
    expect(stops.length).toBeGreaterThan(0);
  });
});
