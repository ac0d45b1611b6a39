import { DoubleSide, MeshStandardMaterial } from 'three';
import type { EndPose } from '../../shared/document/lay/schema.ts';
import type { End } from '../../shared/document/parts/schema.ts';
import { METALS } from './metals.ts';
import { elbowPath, nutPath } from './three/endShape.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface HoseEndProps {
  readonly pose: EndPose;
  readonly end: End | undefined;
  readonly hoseDiameterMm: number;
}

/** An end as it stands on its port: collar, tube with its round, nut. Drawn to its table row, not to a maker's shape. */
export function HoseEnd({ pose, end, hoseDiameterMm }: HoseEndProps) {
  const collarMm = end?.collarDiameterMm ?? hoseDiameterMm * 1.3;
  const metal = METALS[end?.material ?? 'steel'];
  const material = useDisposed(
    () => new MeshStandardMaterial({ ...metal, metalness: 0.35, side: DoubleSide }),
    [metal],
  );
  const nutMaterial = useDisposed(
    () => new MeshStandardMaterial({ ...metal, metalness: 0.35, side: DoubleSide, flatShading: true }),
    [metal],
  );
  const collar = useDisposed(
    () =>
      sweepGeometry([pose.shoulderPoint, pose.mouthPoint], { radiusMm: collarMm / 2, sides: 20, textureLengthMm: 1 }),
    [pose, collarMm],
  );
  const tube = useDisposed(
    () => sweepGeometry(elbowPath(pose), { radiusMm: collarMm * 0.33, sides: 14, textureLengthMm: 1 }),
    [pose, collarMm],
  );
  const nut = useDisposed(
    () => sweepGeometry(nutPath(pose, collarMm * 0.7), { radiusMm: collarMm * 0.62, sides: 6, textureLengthMm: 1 }),
    [pose, collarMm],
  );
  return (
    <group>
      <mesh geometry={collar} material={material} />
      <mesh geometry={tube} material={material} />
      <mesh geometry={nut} material={nutMaterial} />
    </group>
  );
}
