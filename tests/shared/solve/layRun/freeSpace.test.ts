import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

/** Two straight ends facing each other, mouths `apart` mm from each other, hose stiff and light so that weight does not count. */
function facing(apart: number, slack: number, move: (p: Vec3) => [number, number, number] = (p) => [...p]): Lay {
  const hose = exampleHose({ minBendRadiusMm: 60, bendingStiffnessNmm2: 5e6, weightKgPerM: 0.1 });
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const turned = (v: Vec3): [number, number, number] => {
    const [o, p] = [move([0, 0, 0]), move(v)];
    return [p[0] - o[0], p[1] - o[1], p[2] - o[2]];
  };
  const a = examplePort('a', { seatPoint: move([0, 0, 0]), axis: turned([1, 0, 0]), up: turned([0, 0, 1]) });
  const b = examplePort('b', { seatPoint: move([apart + 70, 0, 0]), axis: turned([-1, 0, 0]), up: turned([0, 0, 1]) });
  const resolved = oneRunProject([a, b], [end, end], hose, { slack });
  resolved.project.overrides.push({
    rule: 'straight-tail',
    value: 0,
    reason: 'the closed form is clamped at the mouth',
  });
  return layRun({ project: resolved.project, bay: emptyBay() }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
}

/** Greatest distance of the centreline from the line between the mouths. */
function bow(lay: Lay): number {
  const { mouthPoint: m } = lay.ends.a;
  const n = lay.ends.b.mouthPoint;
  const along = distance(m, n);
  return Math.max(
    ...lay.centreline.points.map((p) => {
      const t =
        ((p[0] - m[0]) * (n[0] - m[0]) + (p[1] - m[1]) * (n[1] - m[1]) + (p[2] - m[2]) * (n[2] - m[2])) / along ** 2;
      return distance(p, [m[0] + t * (n[0] - m[0]), m[1] + t * (n[1] - m[1]), m[2] + t * (n[2] - m[2])]);
    }),
  );
}

describe('a run in free space', () => {
  // Euler's elastica, clamped at both ends with parallel tangents (closed form in elliptic integrals): D/L, h/L, kappa_max L.
  it.each([
    [0.95, 0.14011061, 2.8368174],
    [0.9, 0.19492431, 4.0515267],
  ])("bows as Euler's elastica does at chord over length %d", (ratio, height, curvature) => {
    const chord = ratio === 0.95 ? 500 : 700;
    const lay = facing(chord, 1 / ratio - 1);
    const length = chord / ratio;
    expect(lay.liveLengthMm).toBeCloseTo(length, 2);
    expect(Math.abs(bow(lay) / length - height)).toBeLessThan(0.001);
    expect(Math.abs(length / lay.minRadius.radiusMm / curvature - 1)).toBeLessThan(0.005);
    expect(lay.tautLengthMm).toBeCloseTo(chord, 1);
    expect(lay.slack).toBeCloseTo(1 / ratio - 1, 4);
  });

  it('lies the same when the bay is moved and turned about the plumb line', () => {
    const c = Math.cos(0.6);
    const s = Math.sin(0.6);
    const here = facing(420, 0.06);
    const there = facing(420, 0.06, ([x, y, z]) => [c * x - s * y + 200, s * x + c * y - 100, z + 50]);
    expect(there.cutLengthMm).toBeCloseTo(here.cutLengthMm, 1);
    expect(there.minRadius.radiusMm / here.minRadius.radiusMm).toBeCloseTo(1, 2);
    expect(bow(there) / bow(here)).toBeCloseTo(1, 2);
  });
});
