import { DoubleSide, MeshStandardMaterial } from 'three';
import type { AdapterPose } from '../../shared/document/lay/schema.ts';
import type { Adapter } from '../../shared/document/parts/schema.ts';
import { METALS } from './metals.ts';
import { adapterPaths } from './three/endShape.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface AdapterBodyProps {
  readonly pose: Pick<AdapterPose, 'points' | 'branch' | 'diameterMm'>;
  readonly material: Adapter['material'] | undefined;
}

/** An adapter as it stands on a port: its tube, a hex over the seat it stands on. Drawn to its table row, not to a maker's shape. */
export function AdapterBody({ pose, material }: AdapterBodyProps) {
  const metal = METALS[material ?? 'steel'];
  const look = useDisposed(
    () => new MeshStandardMaterial({ ...metal, metalness: 0.35, side: DoubleSide, flatShading: true }),
    [metal],
  );
  const paths = adapterPaths(pose);
  return (
    <group>
      {paths.tubes.map((path, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a body's tubes have no other name
        <Tube key={`tube-${i}`} path={path} radiusMm={pose.diameterMm * 0.36} sides={16} look={look} />
      ))}
      <Tube path={paths.hex} radiusMm={pose.diameterMm / 2} sides={6} look={look} />
    </group>
  );
}

interface TubeProps {
  readonly path: Parameters<typeof sweepGeometry>[0];
  readonly radiusMm: number;
  readonly sides: number;
  readonly look: MeshStandardMaterial;
}

function Tube({ path, radiusMm, sides, look }: TubeProps) {
  const geometry = useDisposed(
    () => sweepGeometry(path, { radiusMm, sides, textureLengthMm: 1 }),
    [JSON.stringify(path), radiusMm, sides],
  );
  return <mesh geometry={geometry} material={look} />;
}
