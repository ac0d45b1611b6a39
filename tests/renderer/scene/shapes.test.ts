import { describe, expect, it } from 'vitest';
import { creasedMesh } from '../../../renderer/scene/three/creasedMesh.ts';
import { elbowPath } from '../../../renderer/scene/three/endShape.ts';
import { sweep } from '../../../renderer/scene/three/sweep.ts';
import { distance, dot, length, sub, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { sampleLay } from '../sampleBench.ts';

/** A box with shared corners: 8 points, 12 triangles wound outward. */
const BOX_POINTS = new Float32Array([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0, 0, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1]);
const BOX = new Uint32Array([
  0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7,
]);

describe('creasedMesh', () => {
  it('gives a box flat faces and its twelve edges, diagonals left out', () => {
    const { normals, edges, positions, indices } = creasedMesh(BOX_POINTS, BOX);
    // Each of its eight points once for each of its three faces.
    expect(positions.length).toBe(24 * 3);
    const placeOf = (points: Float32Array, i: number) => [...points.subarray(3 * i, 3 * i + 3)];
    BOX.forEach((vertex, corner) => {
      expect(placeOf(positions, indices[corner] as number)).toEqual(placeOf(BOX_POINTS, vertex));
    });
    expect(edges.length / 6).toBe(12);
    for (let i = 0; i < normals.length; i += 3) {
      const n = [...normals.subarray(i, i + 3)].map(Math.abs).sort();
      expect(n).toEqual([0, 0, 1]);
    }
  });

  it('rounds a fine cylinder: normals point away from its axis, and it has no edges', () => {
    const sides = 48;
    const ring = (z: number) =>
      Array.from({ length: sides }, (_, i) => [
        Math.cos((i * 2 * Math.PI) / sides),
        Math.sin((i * 2 * Math.PI) / sides),
        z,
      ]);
    const points = new Float32Array([...ring(0), ...ring(1)].flat());
    const indices = new Uint32Array(
      Array.from({ length: sides }, (_, i) => {
        const j = (i + 1) % sides;
        return [i, j, sides + i, j, sides + j, sides + i];
      }).flat(),
    );
    const { normals, positions, edges } = creasedMesh(points, indices);
    expect(edges.length).toBe(0);
    // Round all over: no point is drawn twice.
    expect(positions.length).toBe(points.length);
    for (let i = 0; i < normals.length; i += 3) {
      const outward = normals[i]! * positions[i]! + normals[i + 1]! * positions[i + 1]!;
      expect(outward).toBeGreaterThan(0.997);
    }
  });

  it('survives a triangle without area', () => {
    const { normals } = creasedMesh(new Float32Array([0, 0, 0, 1, 0, 0, 2, 0, 0]), new Uint32Array([0, 1, 2]));
    expect([...normals].every((n) => n === 0)).toBe(true);
  });
});

describe('sweep', () => {
  it('is nothing where the path has no length, such as a socket that has none', () => {
    const at = [10, 20, 30] as const;
    const { positions, indices } = sweep([at, at], { radiusMm: 8, sides: 12, textureLengthMm: 10 });
    expect([positions.length, indices.length]).toEqual([0, 0]);
  });

  const helix: Vec3[] = Array.from({ length: 200 }, (_, i) => [80 * Math.cos(i / 20), 80 * Math.sin(i / 20), i]);

  it('keeps every point at the radius, and its frame from turning more than the path does', () => {
    const { positions, normals, uvs } = sweep(helix, { radiusMm: 8, sides: 12, textureLengthMm: 10 });
    helix.forEach((centre, ring) => {
      const at = ring * 13 * 3;
      const point: Vec3 = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
      expect(distance(point, centre)).toBeCloseTo(8, 3);
      if (ring === 0) return;
      const before: Vec3 = [normals[at - 39]!, normals[at - 38]!, normals[at - 37]!];
      const now: Vec3 = [normals[at]!, normals[at + 1]!, normals[at + 2]!];
      expect(dot(before, now)).toBeGreaterThan(Math.cos(0.06));
    });
    const steps = helix.slice(1).map((p, i) => length(sub(p, helix[i] as Vec3)));
    expect(uvs.at(-1)).toBeCloseTo(steps.reduce((a, b) => a + b, 0) / 10, 3);
  });

  it('winds its faces outward', () => {
    const { positions, indices } = sweep(
      [
        [0, 0, 0],
        [10, 0, 0],
      ],
      { radiusMm: 5, sides: 8, textureLengthMm: 1 },
    );
    const corner = (i: number): Vec3 => {
      const v = indices[i]! * 3;
      return [positions[v]!, positions[v + 1]!, positions[v + 2]!];
    };
    for (let t = 0; t < indices.length; t += 3) {
      const [a, b, c] = [corner(t), corner(t + 1), corner(t + 2)];
      const [u, v] = [sub(b, a), sub(c, a)];
      const normal = unit([u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]);
      expect(normal[1] * a[1] + normal[2] * a[2]).toBeGreaterThan(0);
    }
  });
});

describe('elbowPath', () => {
  it('runs from shoulder to seat along both legs', () => {
    const pose = {
      ...sampleLay('x').ends.a,
      shoulderPoint: [0, 0, 0],
      bendPoint: [-20, 0, 0],
      seatPoint: [-20, 0, 30],
    } as const;
    const path = elbowPath({ ...sampleLay('x').ends.a, ...structuredClone(pose) } as never);
    expect(path[0]).toEqual([0, 0, 0]);
    expect(path.at(-1)).toEqual([-20, 0, 30]);
    expect(path.every(([x, y, z]) => x >= -20 && x <= 0 && y === 0 && z >= 0 && z <= 30)).toBe(true);
  });

  it('is one straight tube where there is no bend point of its own', () => {
    const pose = { ...sampleLay('x').ends.a, bendPoint: [-40, 0, 0] as [number, number, number] };
    expect(elbowPath(pose)).toEqual([
      [0, 0, 0],
      [-40, 0, 0],
    ]);
  });
});
