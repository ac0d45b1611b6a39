import { MeshLambertMaterial } from 'three';
import type { LainHose } from '../../shared/base/watch.ts';
import type { ScenePalette } from './palette.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface LainInBayProps {
  readonly hoses: readonly LainHose[];
  readonly palette: ScenePalette;
}

/** Hoses found so far while others are still looked for: see-through and without cover or ends, since they may yet be laid otherwise. */
export function LainInBay({ hoses, palette }: LainInBayProps) {
  return hoses.map((hose) => <LainTube key={hose.run} hose={hose} colour={palette.selected} />);
}

function LainTube({ hose, colour }: { hose: LainHose; colour: string }) {
  const tube = useDisposed(
    () => sweepGeometry(hose.points, { radiusMm: hose.outsideDiameterMm / 2, sides: 12, textureLengthMm: 1 }),
    [hose],
  );
  const pale = useDisposed(() => new MeshLambertMaterial({ color: colour, transparent: true, opacity: 0.5 }), [colour]);
  return <mesh geometry={tube} material={pale} renderOrder={3} />;
}
