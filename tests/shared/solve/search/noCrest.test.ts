import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, anySquareTo, cross, scale, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import {
  type PathSegment,
  type Pose,
  poseAlongSegment,
  segmentLengthMm,
} from '../../../../shared/geometry/arcLinePath.ts';
import { type NoCrest, segmentHasNoCrest, turnedRoundNoCrest } from '../../../../shared/solve/search/noCrest.ts';

const RULE: NoCrest = { lowMm: 100, highMm: 400, ceilingMm: 500, fromHigher: true };
const at = (z: number, direction: Vec3): Pose => ({ point: [0, 0, z], direction: unit(direction) });
const line = (lengthMm: number): PathSegment => ({ kind: 'line', lengthMm });
const arc = (angleRad: number, normal: Vec3): PathSegment => ({ kind: 'arc', radiusMm: 50, angleRad, normal });

/** The slow way: rises between two places 1/2000 of the segment apart of which either lies between the two heights. */
function barredBySampling({ lowMm, highMm, fromHigher }: NoCrest, pose: Pose, segment: PathSegment): boolean {
  const n = 2000;
  const z = Array.from(
    { length: n + 1 },
    (_, i) => poseAlongSegment(pose, segment, (segmentLengthMm(segment) * i) / n).point[2],
  );
  if (!fromHigher) z.reverse();
  return z.slice(1).some((to, i) => to - z[i]! > 1e-9 && to > lowMm && z[i]! < highMm);
}

describe('a segment without a crest', () => {
  it.each([
    ['a level straight', at(200, [1, 0, 0]), line(80), true],
    ['a falling straight', at(200, [1, 0, -0.2]), line(80), true],
    ['a straight that rises above the lower end', at(150, [1, 0, 0.2]), line(80), false],
    ['one that rises below the lower end', at(50, [1, 0, 0.2]), line(80), true],
    ['one that rises up to just over the lower end', at(90, [0, 0, 1]), line(10.01), false],
    ['one that rises above the crest of a port that faces up', at(401, [0, 0, 1]), line(50), true],
    // Quarter turns of radius 50: from level up to 50 higher, and from straight up back to level.
    ['a bend from level upwards', at(200, [1, 0, 0]), arc(Math.PI / 2, [0, 0, 1]), false],
    ['a bend from level downwards', at(200, [1, 0, 0]), arc(Math.PI / 2, [0, 0, -1]), true],
    ['a half turn over a crest inside it', at(200, [0, 0, 1]), arc(Math.PI, [1, 0, 0]), false],
    ['a half turn through a valley above the lower end', at(200, [0, 0, -1]), arc(Math.PI, [1, 0, 0]), false],
    ['a half turn through a valley that ends at the lower end', at(100, [0, 0, -1]), arc(Math.PI, [1, 0, 0]), true],
  ] as const)('%s', (_, pose, segment, keeps) => {
    expect(segmentHasNoCrest(RULE, pose, segment)).toBe(keeps);
    // Gone backwards it is the same piece of hose.
    const end = poseAlongSegment(pose, segment, segmentLengthMm(segment));
    const back: Pose = { point: end.point, direction: scale(end.direction, -1) };
    const c = segment.kind === 'arc' ? Math.cos(segment.angleRad) : 1;
    const s = segment.kind === 'arc' ? Math.sin(segment.angleRad) : 0;
    const turned: PathSegment =
      segment.kind === 'line'
        ? segment
        : { ...segment, normal: addScaled(scale(segment.normal, c), pose.direction, -s) };
    expect(segmentHasNoCrest(turnedRoundNoCrest(RULE)!, back, turned)).toBe(keeps);
  });

  it('is what 2000 places along it say, on 2000 seeded segments', () => {
    const random = seededRandom(5);
    let barred = 0;
    for (let n = 0; n < 2000; n++) {
      const direction = unit([random() - 0.5, random() - 0.5, random() - 0.5]);
      const first = anySquareTo(direction);
      const turn = 2 * Math.PI * random();
      const normal = addScaled(scale(first, Math.cos(turn)), cross(direction, first), Math.sin(turn));
      const pose: Pose = { point: [0, 0, 500 * random()], direction };
      const segment: PathSegment =
        random() < 0.3
          ? { kind: 'line', lengthMm: 1 + 200 * random() }
          : { kind: 'arc', radiusMm: 30 + 90 * random(), angleRad: 0.05 + 5 * random(), normal };
      const rule = { ...RULE, fromHigher: random() < 0.5 };
      const slow = barredBySampling(rule, pose, segment);
      if (slow) barred++;
      expect(segmentHasNoCrest(rule, pose, segment)).toBe(!slow);
    }
    expect(barred).toBeGreaterThan(500);
    expect(barred).toBeLessThan(1500);
  });
});
