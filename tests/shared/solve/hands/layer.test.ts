import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, anySquareTo, cross, dot, sub, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { boxOfMesh } from '../../../../shared/geometry/box.ts';
import { nearestDistance } from '../../../../shared/geometry/bvh.ts';
import { visitInBox } from '../../../../shared/geometry/bvhInBox.ts';
import type { TriMesh } from '../../../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { ballsInLayer, bayInLayer, type Flat, type Layer } from '../../../../shared/solve/hands/layer.ts';

function soup(seed: number, count: number): TriMesh {
  const random = seededRandom(seed);
  const positions: number[] = [];
  for (let n = 0; n < count; n++) {
    const at = [0, 1, 2].map(() => 300 * (random() - 0.5));
    for (let corner = 0; corner < 3; corner++) positions.push(...at.map((c) => c + 80 * (random() - 0.5)));
  }
  return {
    positions: Float32Array.from(positions),
    indices: Uint32Array.from({ length: 3 * count }, (_, i) => i),
    parts: [{ name: 'soup', firstTriangle: 0, triangleCount: count }],
  };
}

function corner(mesh: TriMesh, triangle: number, n: number): Vec3 {
  const at = 3 * mesh.indices[3 * triangle + n]!;
  return [mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!];
}

const mesh = soup(3, 400);
const bay: BayIndex = buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);

it('visits every triangle that reaches into a box', () => {
  const random = seededRandom(8);
  for (let n = 0; n < 50; n++) {
    const middle = [0, 1, 2].map(() => 300 * (random() - 0.5));
    const size = 1 + 90 * random();
    const box = {
      min: middle.map((c) => c - size) as unknown as Vec3,
      max: middle.map((c) => c + size) as unknown as Vec3,
    };
    const visited = new Set<number>();
    for (const { bvh } of bay.skins) visitInBox(bvh, box, (slot) => visited.add(bvh.triangles[slot]!));
    for (let t = 0; t < 400; t++) {
      const own = boxOfMesh(mesh, Uint32Array.of(t));
      const meets = [0, 1, 2].every((i) => own.min[i]! <= box.max[i]! && own.max[i]! >= box.min[i]!);
      if (meets) expect(visited.has(t)).toBe(true);
    }
    expect(visited.size).toBeLessThan(400);
  }
});

function inOutline(outline: readonly Flat[], { x, y }: Flat): boolean {
  const sides = outline.map((to, i) => {
    const from = outline.at(i - 1)!;
    const across = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
    return across / Math.max(1e-9, Math.hypot(to.x - from.x, to.y - from.y));
  });
  return sides.every((side) => side > -1e-4) || sides.every((side) => side < 1e-4);
}

it('holds every point of the bay in the layer, and nothing that is not in it', () => {
  const random = seededRandom(21);
  for (let n = 0; n < 12; n++) {
    const axis = unit([random() - 0.5, random() - 0.5, random() - 0.5]);
    const up = anySquareTo(axis);
    const side = cross(axis, up);
    const middle: Vec3 = [60 * random(), 60 * random(), 60 * random()];
    const layer: Layer = { middle, axis, up, thicknessMm: 4 + 20 * random(), reachMm: 120 };
    const shadows = bayInLayer(bay, layer).flatMap((shadow) => ('outline' in shadow ? [shadow.outline] : []));
    let found = 0;
    for (let k = 0; k < 4000; k++) {
      const t = Math.floor(random() * 400);
      const [u, v] = [random(), random()].toSorted((p, q) => p - q) as [number, number];
      const [a, b, c] = [0, 1, 2].map((i) => corner(mesh, t, i)) as [Vec3, Vec3, Vec3];
      const at = addScaled(addScaled(a, sub(b, a), u), sub(c, a), 1 - v);
      const from = sub(at, middle);
      const flat = { x: dot(from, up), y: dot(from, side) };
      if (Math.abs(dot(from, axis)) > layer.thicknessMm / 2 || Math.hypot(flat.x, flat.y) > layer.reachMm) continue;
      found++;
      expect(shadows.some((outline) => inOutline(outline, flat))).toBe(true);
    }
    expect(found).toBeGreaterThan(5);
    // Over the corner of an outline the bay itself is met somewhere within the layer.
    for (const { x, y } of shadows.slice(0, 6).flat()) {
      const foot = addScaled(addScaled(middle, up, x), side, y);
      const least = Math.min(
        ...Array.from({ length: 101 }, (_, k) => {
          const [px, py, pz] = addScaled(foot, axis, (k / 100 - 0.5) * layer.thicknessMm);
          return nearestDistance(bay.skins[0]!.bvh, px, py, pz, Infinity);
        }),
      );
      expect(least).toBeLessThanOrEqual(layer.thicknessMm / 200 + 1e-3);
    }
  }
});

it('cuts a ball to the disc that is left of it in the layer', () => {
  const layer: Layer = { middle: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0], thicknessMm: 6, reachMm: 100 };
  const thing = { kind: 'run', id: 'r2' } as const;
  const ball = (z: number) => ballsInLayer([{ centre: [10, 20, z], radiusMm: 5, thing }], layer);
  expect(ball(2.9)).toEqual([{ thing, centre: { x: 10, y: 20 }, radiusMm: 5 }]);
  // 4 above the layer's face: 3-4-5.
  expect(ball(7)[0]).toMatchObject({ radiusMm: 3 });
  expect(ball(-7)[0]).toMatchObject({ radiusMm: 3 });
  expect(ball(8)).toEqual([]);
});
