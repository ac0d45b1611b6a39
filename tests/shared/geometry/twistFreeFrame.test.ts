import { describe, expect, it } from 'vitest';
import { radiansToDegrees } from '../../../shared/base/units.ts';
import { signedAngleAbout, type Vec3 } from '../../../shared/base/vec3.ts';
import { carryWithoutTwist } from '../../../shared/geometry/twistFreeFrame.ts';

/** A helix of radius r and pitch 2 pi h about z: point, unit tangent and Frenet normal at angle u. */
function helix(r: number, h: number, u: number): { point: Vec3; tangent: Vec3; normal: Vec3 } {
  const c = Math.hypot(r, h);
  return {
    point: [r * Math.cos(u), r * Math.sin(u), h * u],
    tangent: [(-r * Math.sin(u)) / c, (r * Math.cos(u)) / c, h / c],
    normal: [-Math.cos(u), -Math.sin(u), 0],
  };
}

describe('carryWithoutTwist', () => {
  it('turns by -torsion x length against the Frenet frame of a helix (closed form)', () => {
    const [r, h, turns] = [60, 25, 1.7];
    const c2 = r * r + h * h;
    const arcLength = Math.sqrt(c2) * 2 * Math.PI * turns;
    const expectedDeg = radiansToDegrees(-(h / c2) * arcLength);
    const steps = 512;
    const samples = Array.from({ length: steps + 1 }, (_, i) => helix(r, h, (2 * Math.PI * turns * i) / steps));
    const carried = carryWithoutTwist(
      samples.map((s) => s.point),
      samples.map((s) => s.tangent),
      (samples[0] as { normal: Vec3 }).normal,
    );
    const last = samples[steps] as ReturnType<typeof helix>;
    const turned = radiansToDegrees(signedAngleAbout(last.tangent, last.normal, carried[steps] as Vec3));
    const off = ((((turned - expectedDeg) % 360) + 540) % 360) - 180;
    expect(Math.abs(off)).toBeLessThan(1e-6);
  });

  it('turns a carried direction by one octant of the sphere over three square bends about z, x, y (90 degrees, closed form)', () => {
    // Tangent +x -> +y -> +z -> +x: the tangent indicatrix encloses one octant, solid angle pi/2.
    const arcs: [Vec3, Vec3][] = [
      [
        [1, 0, 0],
        [0, 1, 0],
      ],
      [
        [0, 1, 0],
        [0, 0, 1],
      ],
      [
        [0, 0, 1],
        [1, 0, 0],
      ],
    ];
    const points: Vec3[] = [[0, 0, 0]];
    const tangents: Vec3[] = [[1, 0, 0]];
    for (const [from, to] of arcs) {
      const start = points[points.length - 1] as Vec3;
      for (let i = 1; i <= 90; i++) {
        const a = (Math.PI / 180) * i;
        points.push(
          start.map((v, k) => v + 100 * (Math.sin(a) * from[k]! + (1 - Math.cos(a)) * to[k]!)) as unknown as Vec3,
        );
        tangents.push(from.map((f, k) => Math.cos(a) * f + Math.sin(a) * to[k]!) as unknown as Vec3);
      }
    }
    const carried = carryWithoutTwist(points, tangents, [0, 0, 1]);
    const turned = radiansToDegrees(signedAngleAbout([1, 0, 0], [0, 0, 1], carried[carried.length - 1] as Vec3));
    expect(Math.abs(turned)).toBeCloseTo(90, 9);
  });
});
