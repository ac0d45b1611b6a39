import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { boxOfMesh, growBox } from '../../../shared/geometry/box.ts';
import { buildBvh, nearestDistance } from '../../../shared/geometry/bvh.ts';
import { buildDistanceGrid, gridLowerBound } from '../../../shared/geometry/distanceGrid.ts';
import { squaredDistancesToMarked } from '../../../shared/geometry/distanceTransform.ts';
import { markTouchedCells } from '../../../shared/geometry/voxelise.ts';
import { pointOf } from '../../oracles/bruteForceDistance.ts';
import { randomPoint, randomSoup, soupOf } from '../../oracles/randomMesh.ts';

describe('squaredDistancesToMarked', () => {
  it.each([
    [1, 1, 1, 1],
    [7, 1, 1, 0.2],
    [9, 8, 7, 0.02],
    [12, 5, 10, 0.005],
    [6, 6, 6, 0.5],
    [10, 10, 10, 0],
  ])('%i x %i x %i, each cell against every mark', (nx, ny, nz, share) => {
    const random = seededRandom(nx + ny);
    const marks = new Uint8Array(nx * ny * nz).map(() => (random() < share ? 1 : 0));
    const place = (cell: number) => [cell % nx, Math.floor(cell / nx) % ny, Math.floor(cell / (nx * ny))] as const;
    const marked = [...marks.keys()].filter((cell) => marks[cell] === 1).map(place);
    const squares = squaredDistancesToMarked(marks, nx, ny, nz);
    for (let cell = 0; cell < marks.length; cell++) {
      const [i, j, k] = place(cell);
      const expected = marked.map((m) => (m[0] - i) ** 2 + (m[1] - j) ** 2 + (m[2] - k) ** 2);
      expect(squares[cell]).toBe(Math.min(Infinity, ...expected));
    }
  });
});

describe('markTouchedCells', () => {
  const shape = { minX: -60, minY: -60, minZ: -60, cellMm: 8, nx: 15, ny: 15, nz: 15 };
  it('never misses a cell that a point of a triangle lies in', () => {
    const random = seededRandom(3);
    const mesh = randomSoup(random, 400, 110);
    for (let t = 0; t < 400; t++) {
      const marks = new Uint8Array(15 ** 3);
      const inside = markTouchedCells(mesh, new Uint32Array([t]), shape, marks);
      for (let n = 0; n < 150; n++) {
        const s = Math.sqrt(random());
        const v = s * random();
        const p = pointOf(mesh, t, n === 0 ? 0 : s - v, n === 0 ? 0 : v);
        const [i, j, k] = p.map((value) => Math.min(14, Math.max(0, Math.floor((value + 60) / 8)))) as [
          number,
          number,
          number,
        ];
        expect(marks[i + 15 * (j + 15 * k)]).toBe(1);
        if (p.some((value) => value < -60 || value > 60)) expect(inside).toBe(false);
      }
    }
  });

  it('marks no cell that is clear of the triangle', () => {
    const random = seededRandom(4);
    const mesh = randomSoup(random, 60, 100);
    for (let t = 0; t < 60; t++) {
      const only = new Uint32Array([t]);
      const marks = new Uint8Array(15 ** 3);
      if (!markTouchedCells(mesh, only, shape, marks)) continue;
      const bvh = buildBvh(mesh, only);
      marks.forEach((mark, cell) => {
        if (!mark) return;
        const centre = [cell % 15, Math.floor(cell / 15) % 15, Math.floor(cell / 225)].map((c) => -60 + 8 * (c + 0.5));
        const [x, y, z] = centre as [number, number, number];
        expect(nearestDistance(bvh, x, y, z, Infinity)).toBeLessThanOrEqual(4 * Math.sqrt(3) + 1e-6);
      });
    }
  });

  it('marks both sides of a face that a triangle lies in', () => {
    const marks = new Uint8Array(27);
    const flat = soupOf([
      [1, 0.2, 0.2],
      [1, 0.8, 0.2],
      [1, 0.2, 0.8],
    ]);
    markTouchedCells(flat, undefined, { minX: 0, minY: 0, minZ: 0, cellMm: 1, nx: 3, ny: 3, nz: 3 }, marks);
    expect([...marks.keys()].filter((cell) => marks[cell])).toEqual([0, 1]);
  });
});

describe('gridLowerBound', () => {
  it.each([
    [1, 'all of the mesh within', 60],
    [2, 'half of the mesh outside', -120],
    [3, 'most of the mesh outside', -210],
  ])('seed %i, %s: never above the exact distance', (seed, _what, margin) => {
    const random = seededRandom(seed);
    const mesh = randomSoup(random, 25, 500);
    const bvh = buildBvh(mesh);
    const grid = buildDistanceGrid(mesh, undefined, growBox(boxOfMesh(mesh), margin), 9);
    let sum = 0;
    for (let n = 0; n < 4000; n++) {
      const p = randomPoint(random, n % 2 ? 600 : 1500);
      const exact = nearestDistance(bvh, ...p, Infinity);
      const bound = gridLowerBound(grid, ...p);
      expect(bound).toBeLessThanOrEqual(exact + 1e-9);
      if (margin > 0) expect(bound).toBeGreaterThanOrEqual(0.5 * exact - 2 * Math.sqrt(3) * 9);
      sum += bound;
    }
    expect(sum).toBeGreaterThan(0);
  });

  it('loses at most two cell diagonals within the grid', () => {
    const random = seededRandom(9);
    const mesh = randomSoup(random, 40, 400);
    const bvh = buildBvh(mesh);
    const grid = buildDistanceGrid(mesh, undefined, growBox(boxOfMesh(mesh), 100), 7);
    for (let n = 0; n < 2000; n++) {
      const p = randomPoint(random, 400);
      const exact = nearestDistance(bvh, ...p, Infinity);
      expect(gridLowerBound(grid, ...p)).toBeGreaterThanOrEqual(exact - 2 * Math.sqrt(3) * 7 - 1e-9);
    }
  });

  it('knows a plate by hand: 10 mm cells, gap counted between cells', () => {
    const plate = soupOf([
      [0, 0, 5],
      [100, 0, 5],
      [0, 100, 5],
    ]);
    const grid = buildDistanceGrid(plate, undefined, { min: [0, 0, 0], max: [100, 100, 100] }, 10);
    expect(gridLowerBound(grid, 15, 15, 15)).toBe(0);
    expect(gridLowerBound(grid, 15, 15, 25)).toBe(10);
    expect(gridLowerBound(grid, 15, 15, 95)).toBe(80);
    expect(gridLowerBound(grid, 15, 15, 300)).toBeCloseTo(Math.hypot(80, 200), 12);
  });

  it('answers Infinity where there is no mesh', () => {
    const grid = buildDistanceGrid(soupOf([]), undefined, { min: [0, 0, 0], max: [50, 50, 50] }, 10);
    expect(gridLowerBound(grid, 25, 25, 25)).toBe(Infinity);
  });
});
