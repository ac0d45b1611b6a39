import { BufferAttribute, BufferGeometry } from 'three';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import { type SweepOptions, sweep } from './sweep.ts';

export function sweepGeometry(path: readonly Vec3[], options: SweepOptions): BufferGeometry {
  const swept = sweep(path, options);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(swept.positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(swept.normals, 3));
  geometry.setAttribute('uv', new BufferAttribute(swept.uvs, 2));
  geometry.setIndex(new BufferAttribute(swept.indices, 1));
  return geometry;
}
