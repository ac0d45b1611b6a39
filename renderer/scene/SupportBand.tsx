import { DoubleSide, MeshStandardMaterial } from 'three';
import { addScaled } from '../../shared/base/vec3.ts';
import type { LaySupport } from '../../shared/document/lay/schema.ts';
import type { ScenePalette } from './palette.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface SupportBandProps {
  readonly support: LaySupport;
  readonly hoseDiameterMm: number;
  readonly palette: ScenePalette;
}

const HALF_WIDTH_MM = 6;
const STANDS_OUT_MM = 2.5;

/** A clamp or pass-through on the hose: dark where the user placed it, paper where the program asks for it. */
export function SupportBand({ support, hoseDiameterMm, palette }: SupportBandProps) {
  const { point } = support.at;
  const band = useDisposed(
    () =>
      sweepGeometry([addScaled(point, support.axis, -HALF_WIDTH_MM), addScaled(point, support.axis, HALF_WIDTH_MM)], {
        radiusMm: hoseDiameterMm / 2 + STANDS_OUT_MM,
        sides: 20,
        textureLengthMm: 1,
      }),
    [support, hoseDiameterMm],
  );
  const color = support.proposed ? palette.tag.paper : palette.tag.ink;
  const material = useDisposed(() => new MeshStandardMaterial({ color, roughness: 0.9, side: DoubleSide }), [color]);
  return <mesh geometry={band} material={material} />;
}
