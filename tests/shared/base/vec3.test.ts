import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import {
  angleBetween,
  anySquareTo,
  cross,
  distance,
  dot,
  length,
  signedAngleAbout,
  turnAbout,
  unit,
  type Vec3,
} from '../../../shared/base/vec3.ts';

const random = seededRandom(11);
const direction = (): Vec3 => unit([random() - 0.5, random() - 0.5, random() - 0.5]);

describe('vec3', () => {
  it('turns right-handed', () => {
    expect(distance(turnAbout([1, 0, 0], [0, 0, 1], Math.PI / 2), [0, 1, 0])).toBeLessThan(1e-15);
  });

  it('finds back the angle it turned by, and keeps length', () => {
    for (let i = 0; i < 200; i++) {
      const axis = direction();
      const start = anySquareTo(axis);
      const angle = (random() - 0.5) * 2 * Math.PI * 0.999;
      const turned = turnAbout(start, axis, angle);
      expect(length(turned)).toBeCloseTo(1, 12);
      expect(signedAngleAbout(axis, start, turned)).toBeCloseTo(angle, 12);
      expect(angleBetween(start, turned)).toBeCloseTo(Math.abs(angle), 12);
    }
  });

  it('gives square vectors', () => {
    for (let i = 0; i < 200; i++) {
      const [a, b] = [direction(), direction()];
      expect(dot(anySquareTo(a), a)).toBeCloseTo(0, 14);
      expect(dot(cross(a, b), a)).toBeCloseTo(0, 14);
    }
  });
});
