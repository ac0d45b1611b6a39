import { expect, it } from 'vitest';
import { outlinePoints } from '../../../renderer/scene/three/outlinePoints.ts';

const placesOf = (flat: Float32Array): number[][] =>
  Array.from({ length: flat.length / 3 }, (_, i) => [...flat.slice(3 * i, 3 * i + 3)]);

it('a large triangle is told by its corners and by places along its edges', () => {
  const positions = Float32Array.from([0, 0, 0, 100, 0, 0, 0, 0, 50, 999, 999, 999]);
  const places = placesOf(outlinePoints(positions, Uint32Array.from([0, 1, 2]), 25));
  for (const place of [
    [0, 0, 0],
    [100, 0, 0],
    [0, 0, 50],
    [25, 0, 0],
    [75, 0, 0],
    [0, 0, 25],
  ])
    expect(places).toContainEqual(place);
  // Three corners; three places on the first edge, four on the slope, one on the last; none of the vertex nobody uses.
  expect(places).toHaveLength(3 + 3 + 4 + 1);
});

it('a mesh of many triangles is told by some of the corners of each kind, and no edge of it is long', () => {
  const count = 40_000;
  const positions = Float32Array.from({ length: 9 * count }, (_, i) => Math.floor(i / 9) / 100 + ((i % 9) % 4) / 1000);
  const indices = Uint32Array.from({ length: 3 * count }, (_, i) => i);
  const places = placesOf(outlinePoints(positions, indices, 1));
  expect(places.length).toBeGreaterThan(5_000);
  expect(places.length).toBeLessThan(12_000);
  expect(Math.max(...places.map(([x]) => x ?? 0))).toBeGreaterThan((count / 100) * 0.998);
});
