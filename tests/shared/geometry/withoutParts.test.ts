import { expect, it } from 'vitest';
import { partOfTriangle, triangleCount } from '../../../shared/geometry/triMesh.ts';
import { withoutParts } from '../../../shared/geometry/withoutParts.ts';
import { meshOfBlocks } from '../../arbitraries/blockBays.ts';

it('leaves out whole parts, and keeps the others triangle for triangle', () => {
  const mesh = meshOfBlocks([0, 1, 2].map((i) => ({ min: [i, 0, 0] as const, max: [i + 0.5, 1, 1] as const })));
  const less = withoutParts(mesh, (name) => name === 'block-1');
  expect(triangleCount(less)).toBe(24);
  expect(less.parts.map((p) => p.name)).toEqual(['block-0', 'block-2']);
  expect([...less.indices.subarray(36)]).toEqual([...mesh.indices.subarray(72)]);
  expect(partOfTriangle(less, 12).name).toBe('block-2');
  expect(withoutParts(mesh, () => false)).toBe(mesh);
});
