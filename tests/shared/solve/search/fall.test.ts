import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { anySquareTo, dot, turnAbout, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { poseAlongSegment, segmentLengthMm } from '../../../../shared/geometry/arcLinePath.ts';
import { type Fall, segmentFalls, turnedRoundFall } from '../../../../shared/solve/search/fall.ts';

const DOWN: Vec3 = [0, 0, -1];

describe('segmentFalls', () => {
  it('agrees with looking at a thousand places of random arcs', () => {
    const random = seededRandom(5);
    let falling = 0;
    for (let i = 0; i < 2000; i++) {
      const direction = unit([random() - 0.5, random() - 0.5, -random()]);
      const normal = turnAbout(anySquareTo(direction), direction, 2 * Math.PI * random());
      const arc = { kind: 'arc' as const, radiusMm: 80, angleRad: 0.05 + 4 * random() * random(), normal };
      const fall: Fall = { down: DOWN, leastSin: 0.2 * random() };
      const slopes = Array.from({ length: 1001 }, (_, k) => {
        const pose = poseAlongSegment({ point: [0, 0, 0], direction }, arc, (segmentLengthMm(arc) * k) / 1000);
        return dot(pose.direction, DOWN);
      });
      const least = Math.min(...slopes);
      if (Math.abs(least - fall.leastSin) < 1e-5) continue;
      expect(segmentFalls(fall, { point: [0, 0, 0], direction }, arc)).toBe(least > fall.leastSin);
      if (least > fall.leastSin) falling++;
    }
    expect(falling).toBeGreaterThan(200);
  });

  it('asks one who goes backwards to climb', () => {
    const back = turnedRoundFall({ down: DOWN, leastSin: 0.1 })!;
    const up = { point: [0, 0, 0] as Vec3, direction: [0, 0, 1] as Vec3 };
    expect(segmentFalls(back, up, { kind: 'line', lengthMm: 5 })).toBe(true);
    expect(segmentFalls({ down: DOWN, leastSin: 0.1 }, up, { kind: 'line', lengthMm: 5 })).toBe(false);
  });
});
