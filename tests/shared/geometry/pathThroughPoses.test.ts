import { describe, expect, it } from 'vitest';
import { angleBetween, distance, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { type Pose, pathEnd, pathLengthMm, posesAtJoints } from '../../../shared/geometry/arcLinePath.ts';
import { pathThroughPoses } from '../../../shared/geometry/pathThroughPoses.ts';

/** A helix of radius 80 and pitch 120: smooth, and in no plane. Length of one turn: sqrt((2 pi 80)^2 + 120^2). */
function helix(turn: number): Pose {
  const a = 2 * Math.PI * turn;
  const point: Vec3 = [80 * Math.cos(a), 80 * Math.sin(a), 120 * turn];
  return { point, direction: unit([-80 * Math.sin(a), 80 * Math.cos(a), 120 / (2 * Math.PI)]) };
}

describe('a path of arcs through poses', () => {
  it('of a quarter circle is the quarter circle', () => {
    const path = pathThroughPoses([
      { point: [0, 0, 0], direction: [1, 0, 0] },
      { point: [100, 100, 0], direction: [0, 1, 0] },
    ]);
    expect(pathLengthMm(path)).toBeCloseTo(50 * Math.PI, 9);
    for (const s of path.segments) expect(s.kind === 'arc' && s.radiusMm).toBeCloseTo(100, 9);
  });

  it('passes every pose in its direction', () => {
    const poses = Array.from({ length: 9 }, (_, i) => helix(i / 8));
    const joints = posesAtJoints(pathThroughPoses(poses));
    poses.forEach((pose, i) => {
      expect(distance(joints[2 * i]!.point, pose.point)).toBeLessThan(1e-9);
      expect(angleBetween(joints[2 * i]!.direction, pose.direction)).toBeLessThan(1e-7);
    });
  });

  it('has the length of a helix in the limit, with an error that falls', () => {
    const exact = Math.hypot(2 * Math.PI * 80, 120);
    const error = (n: number) =>
      Math.abs(pathLengthMm(pathThroughPoses(Array.from({ length: n + 1 }, (_, i) => helix(i / n)))) - exact);
    expect(error(64)).toBeLessThan(0.01);
    expect(error(64)).toBeLessThan(error(16) / 8);
  });

  it('through poses in line is straight', () => {
    const path = pathThroughPoses([0, 40, 100].map((x): Pose => ({ point: [x, 5, 5], direction: [1, 0, 0] })));
    expect(path.segments.every((s) => s.kind === 'line')).toBe(true);
    expect(pathEnd(path).point).toEqual([100, 5, 5]);
  });
});
