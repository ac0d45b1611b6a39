import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { add, scale, turnAbout, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { type CutOut, cutOutParts } from '../../../shared/geometry/cutOutParts.ts';
import { partOfTriangle, type TriMesh } from '../../../shared/geometry/triMesh.ts';

/** Small triangles, each round a place, in two parts. */
function specks(places: readonly Vec3[], split = places.length): TriMesh {
  const positions = places.flatMap(([x, y, z]) => [x - 1, y, z, x + 1, y - 1, z, x, y + 1, z]);
  const parts = [
    { name: 'scan', firstTriangle: 0, triangleCount: split },
    { name: 'other', firstTriangle: split, triangleCount: places.length - split },
  ].filter(({ triangleCount }) => triangleCount > 0);
  return {
    positions: new Float32Array(positions),
    indices: Uint32Array.from(positions.keys()).filter((i) => i < 3 * places.length),
    parts,
  };
}

const BOX = {
  corner: [0, 0, 0],
  edges: [
    [10, 0, 0],
    [0, 10, 0],
    [0, 0, 10],
  ],
} as const satisfies Omit<CutOut, 'name'>;

/** Where the triangles of a part are: their middles, rounded. */
function placesOf(mesh: TriMesh, name: string): string[] {
  const found: string[] = [];
  for (let t = 0; t < mesh.indices.length / 3; t++) {
    if (partOfTriangle(mesh, t).name !== name) continue;
    const along = (axis: number): number =>
      [0, 1, 2].reduce((sum, c) => sum + mesh.positions[3 * mesh.indices[3 * t + c]! + axis]!, 0) / 3;
    found.push([0, 1, 2].map((axis) => Math.round(along(axis))).join(' '));
  }
  return found;
}

describe('pieces of a mesh as parts of their own', () => {
  it('takes what has its middle in the box, and leaves the rest its name', () => {
    const cut = cutOutParts(
      specks([
        [5, 5, 5],
        [50, 5, 5],
        [9, 1, 2],
        [5, 5, -3],
      ]),
      [{ name: 'pipe', ...BOX }],
    );
    expect(cut.parts.map(({ name }) => name)).toEqual(['scan', 'pipe']);
    expect(placesOf(cut, 'pipe')).toEqual(['5 5 5', '9 1 2']);
    expect(placesOf(cut, 'scan')).toEqual(['50 5 5', '5 5 -3']);
  });

  it('takes from one part alone where it is named, and a part all of which is taken is gone', () => {
    const mesh = specks(
      [
        [5, 5, 5],
        [4, 4, 4],
      ],
      1,
    );
    expect(placesOf(cutOutParts(mesh, [{ name: 'pipe', of: 'other', ...BOX }]), 'pipe')).toEqual(['4 4 4']);
    expect(cutOutParts(mesh, [{ name: 'pipe', ...BOX }]).parts.map(({ name }) => name)).toEqual(['pipe']);
    expect(cutOutParts(mesh, [{ name: 'pipe', of: 'nothing', ...BOX }]).parts).toEqual(mesh.parts);
  });

  it('cuts a piece out of a piece, joins a part of the same name, and leaves the mesh alone where there is nothing to cut', () => {
    const mesh = specks(
      [
        [5, 5, 5],
        [1, 1, 1],
        [50, 0, 0],
      ],
      2,
    );
    const inner = {
      name: 'other',
      of: 'pipe',
      corner: [0, 0, 0],
      edges: [
        [3, 0, 0],
        [0, 3, 0],
        [0, 0, 3],
      ],
    } as const;
    const cut = cutOutParts(mesh, [{ name: 'pipe', ...BOX }, inner]);
    expect(placesOf(cut, 'pipe')).toEqual(['5 5 5']);
    expect(placesOf(cut, 'other')).toEqual(['1 1 1', '50 0 0']);
    expect(cutOutParts(mesh, [])).toBe(mesh);
  });

  it('keeps every triangle once and each in its box, for turned boxes and seeded specks', () => {
    const random = seededRandom(11);
    for (let round = 0; round < 50; round++) {
      const places = Array.from({ length: 60 }, (): Vec3 => [random() * 100, random() * 100, random() * 100]);
      const axis = unit([random() - 0.5, random() - 0.5, random() + 0.1]);
      const angle = random() * 6;
      const sides = (
        [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ] as const
      ).map((side) => turnAbout(side, axis, angle));
      const corner: Vec3 = [random() * 60, random() * 60, random() * 60];
      const lengths = [20 + random() * 40, 20 + random() * 40, 20 + random() * 40];
      const edges = sides.map((side, k) => scale(side, lengths[k]!)) as unknown as CutOut['edges'];
      const mesh = specks(places);
      const cut = cutOutParts(mesh, [{ name: 'piece', corner, edges }]);
      expect([...cut.indices].sort((p, q) => p - q)).toEqual([...mesh.indices]);
      // The oracle asks each place by its shares along the sides of the box, which are square to one another.
      const inside = places.filter((place) => {
        const from = add(place, scale(corner, -1));
        return sides.every((side, k) => {
          const share = from[0] * side[0] + from[1] * side[1] + from[2] * side[2];
          return share >= 0 && share <= lengths[k]!;
        });
      });
      const taken = cut.parts.find(({ name }) => name === 'piece')?.triangleCount ?? 0;
      expect(taken).toBe(inside.length);
    }
  });
});
