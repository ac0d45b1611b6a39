import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { cutOutBox } from '../../../../shared/document/project/cutOutBox.ts';
import { cutOutParts } from '../../../../shared/geometry/cutOutParts.ts';
import { squareUp } from '../../../../shared/geometry/meshImport/squareUp.ts';
import type { TriMesh } from '../../../../shared/geometry/triMesh.ts';

it('is the box itself where the bay is neither scaled nor levelled', () => {
  expect(cutOutBox({}, [1, 2, 3], [11, 22, 33])).toEqual({
    corner: [1, 2, 3],
    edges: [
      [10, 0, 0],
      [0, 20, 0],
      [0, 0, 30],
    ],
  });
});

it('cuts what lies in the box of the bay as it is seen, scaled and levelled', () => {
  const random = seededRandom(3);
  for (let round = 0; round < 30; round++) {
    const bay = { scale: 0.5 + random(), level: unit([random() - 0.5, random() - 0.5, random() + 0.05]) };
    const places = Array.from({ length: 80 }, (): Vec3 => [random() * 200, random() * 200, random() * 200]);
    const lying: TriMesh = {
      // Each triangle is shrunk to its place, so that its middle is known.
      positions: new Float32Array(places.flatMap((place) => [...place, ...place, ...place])),
      indices: Uint32Array.from({ length: 3 * places.length }, (_, i) => i),
      parts: [{ name: 'scan', firstTriangle: 0, triangleCount: places.length }],
    };
    const seen = squareUp(lying, bay);
    const [low, high]: [Vec3, Vec3] = [
      [-40, -40, -40],
      [60, 90, 120],
    ];
    const isIn = (t: number): boolean =>
      [0, 1, 2].every((k) => seen.positions[9 * t + k]! > low[k]! && seen.positions[9 * t + k]! < high[k]!);
    const cut = cutOutParts(lying, [{ name: 'piece', ...cutOutBox(bay, low, high) }]);
    const piece = cut.parts.find(({ name }) => name === 'piece');
    const taken = new Set(
      piece === undefined
        ? []
        : [...cut.indices.subarray(3 * piece.firstTriangle, 3 * (piece.firstTriangle + piece.triangleCount))].map((v) =>
            Math.floor(v / 3),
          ),
    );
    expect([...taken].sort((p, q) => p - q)).toEqual(places.map((_, t) => t).filter(isIn));
  }
});
