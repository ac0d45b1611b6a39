import { describe, expect, it } from 'vitest';
import { degreesApart } from '../../../../shared/base/units.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

/**
 * The known answer (closed form: two quarter circles of R100 and straights of 50, 100 and 50, in square planes): overall
 * 514.159 mm elbow centre to elbow centre, clock 270 degrees. The hose is held by four clamps where line meets arc, and its least
 * radius is 100 mm at the centreline, so that taut it can lie no other way.
 */
/** Stiff and light, so that its own weight does not bend the answer. */
const STIFF = {
  minBendRadiusMm: 100,
  minBendRadiusDatum: 'centreline',
  bendingStiffnessNmm2: 5e6,
  weightKgPerM: 0.1,
} as const;

function rig() {
  const a = examplePort('a', { seatPoint: [0, 0, 30], axis: [0, 0, -1], up: [1, 0, 0] });
  const b = examplePort('b', { seatPoint: [180, 300, 150], axis: [-1, 0, 0], up: [0, 0, -1] });
  const clamp = (id: string, point: [number, number, number], axis: [number, number, number]) => ({
    id,
    kind: 'clamp' as const,
    point,
    axis,
  });
  return oneRunProject([a, b], [exampleEnd(90), exampleEnd(90)], exampleHose(STIFF), {
    a: { port: 'a', end: 'end-90', clockDeg: 0 },
    b: { port: 'b', end: 'end-90', clockDeg: 0 },
    slack: 0,
    supports: [
      clamp('c1', [50, 0, 0], [1, 0, 0]),
      clamp('c2', [150, 100, 0], [0, 1, 0]),
      clamp('c3', [150, 200, 0], [0, 1, 0]),
      clamp('c4', [150, 300, 100], [0, 0, 1]),
    ],
  });
}

describe('the two-elbow rig', () => {
  const project = rig();
  const lay = layRun({ project: project.project, bay: emptyBay() }, project.runs[0]!, buildTubeField([]), UNWATCHED);

  it('has the known length to 0.05 mm', () => {
    expect(Math.abs(lay.overallLengthMm - (200 + 100 * Math.PI))).toBeLessThan(0.05);
    expect(Math.abs(lay.cutLengthMm - (106 + 100 * Math.PI))).toBeLessThan(0.05);
  });

  it('has the known clock to 0.05 degree', () => {
    expect(lay.clock.kind).toBe('angle');
    if (lay.clock.kind === 'angle') expect(degreesApart(lay.clock.deg, 270)).toBeLessThan(0.05);
  });

  it('bends to R100 and is laid', () => {
    expect(lay.minRadius.radiusMm).toBeGreaterThan(99.9);
    expect(lay.minRadius.radiusMm).toBeLessThan(100.1);
    expect(lay.outcome).toBe('laid');
  });
});
