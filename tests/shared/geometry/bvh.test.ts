import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { distance, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import {
  type Bvh,
  buildBvh,
  bvhBytes,
  firstHit,
  nearestDistance,
  nearestPoint,
  newNearest,
  newRayHit,
} from '../../../shared/geometry/bvh.ts';
import type { TriMesh } from '../../../shared/geometry/triMesh.ts';
import { bruteForceDistance, bruteForceRay, cornerOf, distanceToTriangle } from '../../oracles/bruteForceDistance.ts';
import { randomPoint, randomSoup, soupOf } from '../../oracles/randomMesh.ts';

const unitTriangle = soupOf([
  [0, 0, 0],
  [1, 0, 0],
  [0, 1, 0],
]);

/** Distances agree to float64 rounding of coordinates of this size. */
function within(actual: number, expected: number, coordinateMm: number): void {
  if (expected === Infinity) expect(actual).toBe(Infinity);
  else expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * coordinateMm);
}

describe('nearestPoint, worked by hand', () => {
  const bvh = buildBvh(unitTriangle);
  it.each([
    [[0.25, 0.25, 3], 3, [0.25, 0.25, 0]],
    [[0.25, 0.25, -3], 3, [0.25, 0.25, 0]],
    [[-3, -4, 0], 5, [0, 0, 0]],
    [[0.5, -2, 0], 2, [0.5, 0, 0]],
    [[1, 1, 0], Math.SQRT1_2, [0.5, 0.5, 0]],
    [[4, 0, 4], 5, [1, 0, 0]],
  ] as [Vec3, number, Vec3][])('from %j', (p, distanceMm, foot) => {
    const out = newNearest();
    expect(nearestPoint(bvh, ...p, Infinity, out)).toBe(true);
    expect(out.distanceMm).toBeCloseTo(distanceMm, 12);
    expect(distance([out.x, out.y, out.z], foot)).toBeLessThan(1e-12);
    expect(out.triangle).toBe(0);
  });

  it('answers nothing at the bound, something just under it', () => {
    const out = newNearest();
    expect(nearestPoint(bvh, 0.25, 0.25, 3, 3, out)).toBe(false);
    expect(out).toMatchObject({ distanceMm: Infinity, triangle: -1 });
    expect(nearestDistance(bvh, 0.25, 0.25, 3, 3)).toBe(Infinity);
    expect(nearestDistance(bvh, 0.25, 0.25, 3, 3.001)).toBe(3);
    expect(nearestDistance(bvh, 0.25, 0.25, 0, 0)).toBe(Infinity);
    expect(nearestDistance(bvh, 0.25, 0.25, 0, -5)).toBe(Infinity);
  });
});

describe('nearestPoint against every triangle in turn', () => {
  it.each([1, 2, 3, 4, 5, 6, 17, 100, 1500])('%i triangles of all shapes', (count) => {
    const random = seededRandom(count);
    const mesh = randomSoup(random, count, 1000);
    const bvh = buildBvh(mesh);
    const out = newNearest();
    for (let n = 0; n < 200; n++) {
      const p = randomPoint(random, 1600);
      const expected = bruteForceDistance(mesh, p);
      expect(nearestPoint(bvh, ...p, Infinity, out)).toBe(true);
      within(out.distanceMm, expected, 2000);
      within(distance(p, [out.x, out.y, out.z]), expected, 2000);
      const corners = [0, 1, 2].map((c) => cornerOf(mesh, out.triangle, c)) as [Vec3, Vec3, Vec3];
      within(distanceToTriangle(p, ...corners), expected, 2000);
      within(distanceToTriangle([out.x, out.y, out.z], ...corners), 0, 4000);
    }
  });

  it('finds points that lie on the mesh at no distance', () => {
    const random = seededRandom(8);
    const mesh = randomSoup(random, 300, 500);
    const bvh = buildBvh(mesh);
    for (let t = 0; t < 300; t++) within(nearestDistance(bvh, ...cornerOf(mesh, t, t % 3), Infinity), 0, 1);
  });

  it('keeps to a subset and answers with numbers of the mesh', () => {
    const random = seededRandom(21);
    const mesh = randomSoup(random, 400, 800);
    const subset = new Uint32Array([...Array(400).keys()].filter(() => random() < 0.2));
    const bvh = buildBvh(mesh, subset);
    const out = newNearest();
    for (let n = 0; n < 200; n++) {
      const p = randomPoint(random, 900);
      nearestPoint(bvh, ...p, Infinity, out);
      within(out.distanceMm, bruteForceDistance(mesh, p, subset), 1000);
      expect(subset).toContain(out.triangle);
    }
  });

  it('answers Infinity for a subset without triangles', () => {
    const bvh = buildBvh(unitTriangle, new Uint32Array(0));
    expect(nearestDistance(bvh, 0, 0, 0, Infinity)).toBe(Infinity);
    expect(nearestPoint(bvh, 0, 0, 0, Infinity, newNearest())).toBe(false);
    expect(firstHit(bvh, 0.2, 0.2, 1, 0, 0, -1, Infinity, newRayHit())).toBe(false);
  });

  it('honours any bound', () => {
    const random = seededRandom(33);
    const mesh = randomSoup(random, 300, 500);
    const bvh = buildBvh(mesh);
    for (let n = 0; n < 300; n++) {
      const p = randomPoint(random, 700);
      const bound = random() * 200;
      const expected = bruteForceDistance(mesh, p);
      within(nearestDistance(bvh, ...p, bound), expected < bound ? expected : Infinity, 1000);
    }
  });

  it('stays exact for needles thinner than the coordinates can tell', () => {
    const mesh = soupOf([
      [0, 0, 0],
      [1000, 0.0001, 0],
      [2000, 0, 0],
      [5000, 5000, 5000],
      [5000.0005, 5000, 5000],
      [7000, 7000.0005, 5000],
    ]);
    const bvh = buildBvh(mesh);
    within(nearestDistance(bvh, 1000, 7, 0, Infinity), 7 - Math.fround(0.0001), 1);
    within(nearestDistance(bvh, 500, 0, -3, Infinity), 3, 1);
    within(nearestDistance(bvh, 6000, 6000, 5010, 11), bruteForceDistance(mesh, [6000, 6000, 5010]), 7000);
  });

  it('bears thousands of triangles in one place', () => {
    const corner: Vec3 = [1, 2, 3];
    const mesh = soupOf(Array.from({ length: 3000 }, () => corner));
    expect(nearestDistance(buildBvh(mesh), 1, 2, 8, Infinity)).toBe(5);
  });
});

describe('what must not change the answer', () => {
  const random = seededRandom(77);
  const mesh = randomSoup(random, 500, 600);
  const points = Array.from({ length: 200 }, () => randomPoint(random, 800));
  const answer = (bvh: Bvh, shift: number) =>
    points.map(([x, y, z]) => nearestDistance(bvh, x + shift, y - shift, z + shift, Infinity));
  const plain = answer(buildBvh(mesh), 0);

  it('moving mesh and points together', () => {
    // Whole multiples of a power of two keep the float32 corners exact only up to rounding of the moved ones.
    const shift = 4096;
    const positions = mesh.positions.map((value, at) => value + (at % 3 === 1 ? -shift : shift));
    const moved = answer(buildBvh({ ...mesh, positions }), shift);
    const rounding = 2 ** -11 * Math.sqrt(3);
    moved.forEach((value, n) => {
      expect(Math.abs(value - plain[n]!)).toBeLessThanOrEqual(rounding);
    });
  });

  it('the order of triangles and of corners', () => {
    const order = [...Array(500).keys()].sort(() => random() - 0.5);
    const indices = new Uint32Array(order.flatMap((t) => [1, 2, 0].map((c) => mesh.indices[3 * t + c]!)));
    answer(buildBvh({ ...mesh, indices }), 0).forEach((value, n) => {
      within(value, plain[n]!, 1000);
    });
  });

  it('a trip through a worker', () => {
    const bvh = buildBvh(mesh);
    const copy = structuredClone(bvh);
    expect(answer(copy, 0)).toEqual(plain);
    expect(bvhBytes(copy)).toBe(bvhBytes(bvh));
  });
});

describe('firstHit', () => {
  it('against every triangle in turn', () => {
    const random = seededRandom(5);
    const mesh = randomSoup(random, 600, 1000);
    const bvh = buildBvh(mesh);
    const out = newRayHit();
    let hits = 0;
    for (let n = 0; n < 1500; n++) {
      const origin = randomPoint(random, 1200);
      const direction = unit(randomPoint(random, 1));
      const expected = bruteForceRay(mesh, origin, direction);
      const hit = firstHit(bvh, ...origin, ...direction, Infinity, out);
      expect(hit).toBe(expected < Infinity);
      if (!hit) continue;
      hits++;
      expect(Math.abs(out.distanceMm - expected)).toBeLessThan(1e-6);
      const corners = [0, 1, 2].map((c) => cornerOf(mesh, out.triangle, c)) as [Vec3, Vec3, Vec3];
      expect(distanceToTriangle([out.x, out.y, out.z], ...corners)).toBeLessThan(1e-6);
      expect(firstHit(bvh, ...origin, ...direction, expected * 0.999, out)).toBe(false);
    }
    expect(hits).toBeGreaterThan(100);
  });

  it('runs along grid axes, through box faces, and never between two triangles that share an edge', () => {
    const mesh = gridPlate(16);
    const bvh = buildBvh(mesh);
    const out = newRayHit();
    for (let i = 0; i <= 64; i++) {
      for (let j = 0; j <= 64; j++) {
        expect(firstHit(bvh, i / 4, j / 4, 5, 0, 0, -1, Infinity, out)).toBe(true);
        expect(out.distanceMm).toBe(5);
      }
    }
    expect(firstHit(bvh, 3, 3, 5, 0, 0, 1, Infinity, out)).toBe(false);
    expect(firstHit(bvh, 20, 3, 5, 0, 0, -1, Infinity, out)).toBe(false);
  });

  it('never slips through the seams of a crumpled plate', () => {
    const random = seededRandom(13);
    const plate = gridPlate(16);
    const positions = plate.positions.map((value, at) => (at % 3 === 2 ? random() : value));
    const mesh = { ...plate, positions };
    const bvh = buildBvh(mesh);
    const out = newRayHit();
    for (let n = 0; n < 2000; n++) {
      // aimed at points of edges, where a careless test sees neither neighbour
      const t = Math.floor(random() * (mesh.indices.length / 3));
      const [a, b] = [cornerOf(mesh, t, 0), cornerOf(mesh, t, 1)];
      const s = random();
      const aim: Vec3 = [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])];
      if (aim[0] < 0.5 || aim[0] > 15.5 || aim[1] < 0.5 || aim[1] > 15.5) continue;
      const origin: Vec3 = [8 + random(), 8 + random(), 40];
      const direction = unit([aim[0] - origin[0], aim[1] - origin[1], aim[2] - origin[2]]);
      expect(firstHit(bvh, ...origin, ...direction, Infinity, out)).toBe(true);
    }
  });
});

/** A flat plate of n by n squares of 1 mm, two triangles each, with shared vertices. */
function gridPlate(n: number): TriMesh {
  const positions: number[] = [];
  const indices: number[] = [];
  for (let j = 0; j <= n; j++) for (let i = 0; i <= n; i++) positions.push(i, j, 0);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < n; i++) {
      const at = i + (n + 1) * j;
      indices.push(at, at + 1, at + n + 2, at, at + n + 2, at + n + 1);
    }
  }
  return {
    positions: new Float32Array(positions),
    indices: new Uint32Array(indices),
    parts: [{ name: 'plate', firstTriangle: 0, triangleCount: 2 * n * n }],
  };
}
