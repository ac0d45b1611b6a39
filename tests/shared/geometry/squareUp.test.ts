import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { angleBetween, distance, UP, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { levelled, squareUp, unlevelled } from '../../../shared/geometry/meshImport/squareUp.ts';
import type { TriMesh } from '../../../shared/geometry/triMesh.ts';

const mesh: TriMesh = {
  positions: Float32Array.from([0, 0, 0, 100, 0, 0, 0, 200, 0, 0, 0, 300]),
  indices: Uint32Array.from([0, 1, 2, 0, 1, 3]),
  parts: [{ name: 'a', firstTriangle: 0, triangleCount: 2 }],
};
const corner = ({ positions }: TriMesh, i: number): Vec3 => [
  positions[3 * i] as number,
  positions[3 * i + 1] as number,
  positions[3 * i + 2] as number,
];

describe('a bay brought to its true size and level', () => {
  it('is left byte for byte where nothing is stated, or up is up already', () => {
    expect(squareUp(mesh, {})).toBe(mesh);
    expect(squareUp(mesh, { level: [0, 0, 5] })).toBe(mesh);
  });

  it('is scaled about the origin', () => {
    expect([...squareUp(mesh, { scale: 1.5 }).positions]).toEqual([0, 0, 0, 150, 0, 0, 0, 300, 0, 0, 0, 450]);
  });

  it('has what was truly up at +Z, every distance kept: quarter turns in closed form, others by what a rotation is', () => {
    // +X up: x comes to z, and by the least rotation, about y, z comes to -x
    const turned = squareUp(mesh, { level: [1, 0, 0] });
    expect(distance(corner(turned, 1), [0, 0, 100])).toBeLessThan(1e-4);
    expect(distance(corner(turned, 2), [0, 200, 0])).toBeLessThan(1e-4);
    expect(distance(corner(turned, 3), [-300, 0, 0])).toBeLessThan(1e-4);
    const random = seededRandom(3);
    for (let i = 0; i < 50; i++) {
      const level = unit([random() - 0.5, random() - 0.5, random() - 0.5]);
      expect(angleBetween(levelled(level, level), UP)).toBeLessThan(1e-7);
      const any: Vec3 = [random(), random(), random()];
      expect(distance(unlevelled(levelled(any, level), level), any)).toBeLessThan(1e-12);
      const lying = squareUp(mesh, { level });
      for (const [p, q] of [
        [1, 2],
        [2, 3],
        [1, 3],
      ] as const)
        expect(distance(corner(lying, p), corner(lying, q))).toBeCloseTo(distance(corner(mesh, p), corner(mesh, q)), 3);
    }
  });

  it('upside down is turned over', () => {
    expect(distance(corner(squareUp(mesh, { level: [0, 0, -1] }), 3), [0, 0, -300])).toBeLessThan(1e-3);
  });
});
