import { DoubleSide, MeshStandardMaterial } from 'three';
import type { Lock } from '../../shared/document/project/schema.ts';
import type { ScenePalette } from './palette.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface LockedStretchProps {
  readonly lock: Lock;
  readonly hoseDiameterMm: number;
  readonly palette: ScenePalette;
}

/** mm by which the wrap stands out; and how long one turn of it is. */
const STANDS_OUT_MM = 0.9;
const TURN_MM = 11;

/** A locked stretch, wrapped with tape in open turns: the hose is seen between them. */
export function LockedStretch({ lock, hoseDiameterMm, palette }: LockedStretchProps) {
  const turns = lock.points.length > 1;
  const geometry = useDisposed(
    () =>
      sweepGeometry(lock.points, {
        radiusMm: hoseDiameterMm / 2 + STANDS_OUT_MM,
        sides: 20,
        textureLengthMm: TURN_MM,
      }),
    [lock, hoseDiameterMm],
  );
  const material = useDisposed(() => wrapMaterial(palette.tag.paper), [palette]);
  return turns ? <mesh geometry={geometry} material={material} /> : null;
}

function wrapMaterial(color: string): MeshStandardMaterial {
  const material = new MeshStandardMaterial({ color, roughness: 1, side: DoubleSide });
  material.defines = { USE_UV: '' };
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec2 vWrap;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvWrap = uv;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', '#include <common>\nvarying vec2 vWrap;')
      .replace('#include <clipping_planes_fragment>', 'if (fract(vWrap.x + vWrap.y) > 0.5) discard;');
  };
  material.customProgramCacheKey = () => 'wrap';
  return material;
}
