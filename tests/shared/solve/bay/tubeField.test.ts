import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, distance, dot, sub, type Vec3 } from '../../../../shared/base/vec3.ts';
import { buildTubeField, nearestTube, newNearestTube, type Tube } from '../../../../shared/solve/bay/tubeField.ts';

/** The slow twin: every piece of every tube. */
function slowGap(tubes: readonly Tube[], p: Vec3): number {
  let least = Infinity;
  for (const tube of tubes)
    for (let i = 0; i + 1 < tube.points.length; i++) {
      const a = tube.points[i] as Vec3;
      const ab = sub(tube.points[i + 1] as Vec3, a);
      const t = Math.min(1, Math.max(0, dot(sub(p, a), ab) / dot(ab, ab)));
      least = Math.min(least, distance(p, addScaled(a, ab, t)) - tube.radiusMm);
    }
  return least;
}

describe('tubeField', () => {
  const random = seededRandom(7);
  const place = (): Vec3 => [random() * 500, random() * 500, random() * 500];
  const tubes: Tube[] = Array.from({ length: 9 }, (_, i) => {
    const a = place();
    const b = place();
    const points = Array.from({ length: 40 }, (_, k) => addScaled(a, sub(b, a), k / 39));
    return { run: `run-${i}`, points, radiusMm: 5 + i };
  });
  const field = buildTubeField(tubes);

  it('answers what looking at every piece answers', () => {
    const near = newNearestTube();
    for (let i = 0; i < 500; i++) {
      const p = place();
      const slow = slowGap(tubes, p);
      expect(nearestTube(field, ...p, Infinity, near)).toBe(true);
      expect(near.gapMm).toBeCloseTo(slow, 9);
      expect(nearestTube(field, ...p, slow - 0.01, near)).toBe(false);
      expect(nearestTube(field, ...p, slow + 0.01, near)).toBe(true);
    }
  });

  it('answers nothing without tubes', () => {
    expect(nearestTube(buildTubeField([]), 0, 0, 0, Infinity, newNearestTube())).toBe(false);
  });
});
