import { describe, expect, it } from 'vitest';
import { addScaled, anySquareTo, cross, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { pathLengthMm } from '../../../../shared/geometry/arcLinePath.ts';
import { shortestFreePath } from '../../../../shared/geometry/freeShortest/shortestFreePath.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

/** mm; the hose's least radius, by which the places of the other mouth are given */
const RADIUS_MM = 60;
/** Straight ends: mouth 35 mm ahead of the seat. */
const REACH_MM = 35;

/** Mouth A at the origin looking along +x; mouth B at `at` radii, where the hose is to arrive along `arriving`. */
function layBetween(at: Vec3, arriving: Vec3): { lay: Lay; freeMm: (radiusMm: number) => number } {
  const hose = exampleHose({ minBendRadiusMm: RADIUS_MM, bendingStiffnessNmm2: 5e6, weightKgPerM: 0.1 });
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const direction = unit(arriving);
  const mouth: [number, number, number] = [at[0] * RADIUS_MM, at[1] * RADIUS_MM, at[2] * RADIUS_MM];
  const up = cross(direction, anySquareTo(direction));
  const a = examplePort('a', { seatPoint: [-REACH_MM, 0, 0], axis: [1, 0, 0], up: [0, 0, 1] });
  const b = examplePort('b', {
    seatPoint: [...addScaled(mouth, direction, REACH_MM)],
    axis: [-direction[0], -direction[1], -direction[2]],
    up: [...up],
  });
  const resolved = oneRunProject([a, b], [end, end], hose, { slack: 0.02 });
  resolved.project.overrides.push({ rule: 'straight-tail', value: 0, reason: 'mouths are held as they are' });
  const lay = layRun(
    { project: resolved.project, bay: emptyBay() },
    resolved.runs[0] as (typeof resolved.runs)[0],
    buildTubeField([]),
    UNWATCHED,
  );
  const from = { point: [0, 0, 0], direction: [1, 0, 0] } as const;
  const freeMm = (radiusMm: number): number => {
    const path = shortestFreePath(from, { point: mouth, direction }, radiusMm);
    return path ? pathLengthMm(path) : Number.NaN;
  };
  return { lay, freeMm };
}

describe('ports one to three radii apart', () => {
  it.each<[string, Vec3, Vec3]>([
    ['beside each other, looking the same way', [0, 1, 0], [1, 0, 0]],
    ['beside each other, looking back', [0, 1, 0], [-1, 0, 0]],
    ['two radii beside each other, looking back', [0, 2, 0], [-1, 0, 0]],
    ['beside each other and square', [0, 1, 0], [0, 0, 1]],
    ['beside each other and square, inwards', [0, 1, 0], [0, -1, 0]],
    ['skew', [0.6, 0.6, 0.5], [-0.3, 0.5, -0.8]],
    ['two radii apart, skew', [1.2, 1.2, 1], [-0.5, -0.5, -0.8]],
    ['three radii apart at 60 degrees, looking the same way', [1.5, 2.598, 0], [1, 0, 0]],
  ])('are joined by a hose that keeps its radius: %s', (_, at, arriving) => {
    const { lay, freeMm } = layBetween(at, arriving);
    expect(lay.outcome).toBe('laid');
    expect(lay.minRadius.radiusMm).toBeGreaterThanOrEqual(RADIUS_MM);
    // The taut length is that of the shortest curve with the radius asked for: between those of the hose's own and of 1.2 times it.
    expect(lay.tautLengthMm).toBeGreaterThan(0.995 * freeMm(RADIUS_MM));
    expect(lay.tautLengthMm).toBeLessThan(1.005 * Math.max(freeMm(1.2 * RADIUS_MM), freeMm(RADIUS_MM)));
    expect(lay.liveLengthMm).toBeGreaterThanOrEqual(lay.tautLengthMm);
  });
});
