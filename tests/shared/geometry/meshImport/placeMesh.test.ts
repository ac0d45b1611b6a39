import { describe, expect, it } from 'vitest';
import { cross, dot, type Vec3 } from '../../../../shared/base/vec3.ts';
import { guessUnit, mergeMeshes, placeMesh, UP_AXES } from '../../../../shared/geometry/meshImport/index.ts';
import { uniqueNames } from '../../../../shared/geometry/meshImport/uniqueNames.ts';
import { soupOf } from '../../../oracles/randomMesh.ts';

const axes = soupOf([
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]);

function axisOf(name: string): Vec3 {
  const sign = name.startsWith('-') ? -1 : 1;
  return ['x', 'y', 'z'].map((letter) => (name.endsWith(letter) ? sign : 0)) as unknown as Vec3;
}

describe('placeMesh', () => {
  it.each(UP_AXES)('%s up: a rotation that brings it to +Z', (up) => {
    const { positions } = placeMesh(axes, 'mm', up);
    const [x, y, z] = [0, 3, 6].map((at) => [...positions.slice(at, at + 3)] as unknown as Vec3) as [Vec3, Vec3, Vec3];
    expect(cross(x, y).map((value) => value + 0)).toEqual([...z]);
    expect(dot(x, x)).toBe(1);
    const direction = axisOf(up);
    const image = [0, 1, 2].map((n) => direction[0] * x[n]! + direction[1] * y[n]! + direction[2] * z[n]! + 0);
    expect(image).toEqual([0, 0, 1]);
  });

  it.each([
    ['mm', 1],
    ['cm', 10],
    ['m', 1000],
    ['in', Math.fround(25.4)],
  ] as const)('%s', (unit, length) => {
    expect(placeMesh(axes, unit, '+z').positions[0]).toBe(length);
  });
});

describe('guessUnit', () => {
  const box = (side: number) => ({ min: [0, 0, 0], max: [side / 3, side, side / 2] }) as const;
  it.each([
    [262, 'mm'],
    [1800, 'mm'],
    [1.83, 'm'],
    [0.25, 'm'],
    [60, 'in'],
    [9000, 'mm'],
    [0.01, 'm'],
  ] as const)('%f long: %s', (side, unit) => {
    expect(guessUnit(box(side))).toBe(unit);
  });

  it('says mm of nothing', () => {
    expect(guessUnit({ min: [Infinity, Infinity, Infinity], max: [-Infinity, -Infinity, -Infinity] })).toBe('mm');
  });
});

describe('mergeMeshes', () => {
  it('keeps triangles, parts and unique names', () => {
    const merged = mergeMeshes([axes, axes, soupOf([])]);
    expect([...merged.indices]).toEqual([0, 1, 2, 3, 4, 5]);
    expect(merged.positions).toHaveLength(18);
    expect(merged.parts).toEqual([
      { name: 'soup', firstTriangle: 0, triangleCount: 1 },
      { name: 'soup 2', firstTriangle: 1, triangleCount: 1 },
    ]);
    expect(mergeMeshes([]).parts).toEqual([]);
  });
});

describe('uniqueNames', () => {
  it('numbers repeats, names the nameless, and takes no name that is another part’s', () => {
    expect(uniqueNames(['pipe', '', ' pipe ', 'pipe 2', 'pipe', '  '])).toEqual([
      'pipe',
      'part 2',
      'pipe 3',
      'pipe 2',
      'pipe 4',
      'part 6',
    ]);
  });
});
