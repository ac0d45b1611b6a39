import type { ThreeEvent } from '@react-three/fiber';
import { DoubleSide, GreaterDepth, MeshBasicMaterial, MeshStandardMaterial } from 'three';
import { addScaled, unit } from '../../shared/base/vec3.ts';
import type { ShownSupport } from '../state/shownSupports.ts';
import type { ScenePalette } from './palette.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface SupportBandProps {
  readonly support: ShownSupport;
  readonly hoseDiameterMm: number;
  readonly chosen: boolean;
  readonly palette: ScenePalette;
  /** absent = it is only looked at */
  readonly onPress?: (event: ThreeEvent<PointerEvent>) => void;
}

/** Half the width along the hose and how far it stands out, mm: a clamp is a band, a grommet a flange, a waypoint a loop. */
const SIZES: Record<ShownSupport['kind'], { readonly halfWidthMm: number; readonly standsOutMm: number }> = {
  clamp: { halfWidthMm: 6, standsOutMm: 2.5 },
  'pass-through': { halfWidthMm: 2, standsOutMm: 8 },
  waypoint: { halfWidthMm: 1.6, standsOutMm: 2.2 },
};

/** What holds or guides a hose: dark where the user placed it, paper where the program asks for it. */
export function SupportBand({ support, hoseDiameterMm, chosen, palette, onPress }: SupportBandProps) {
  const { point, kind } = support;
  const axis = unit(support.axis);
  const { halfWidthMm, standsOutMm } = SIZES[kind];
  const band = useDisposed(
    () =>
      sweepGeometry([addScaled(point, axis, -halfWidthMm), addScaled(point, axis, halfWidthMm)], {
        radiusMm: hoseDiameterMm / 2 + standsOutMm,
        sides: 24,
        textureLengthMm: 1,
      }),
    [point.join(), axis.join(), kind, hoseDiameterMm],
  );
  const color = chosen ? palette.selected : support.proposed ? palette.tag.paper : palette.tag.ink;
  const material = useDisposed(() => new MeshStandardMaterial({ color, roughness: 0.9, side: DoubleSide }), [color]);
  const taken = onPress !== undefined;
  const behind = useDisposed(
    () =>
      new MeshBasicMaterial({ color, transparent: true, opacity: 0.85, depthFunc: GreaterDepth, depthWrite: false }),
    [color],
  );
  return (
    <group>
      {/* What can be taken in the hand is seen through covers, as its hose is. */}
      {taken && <mesh geometry={band} material={behind} renderOrder={11} />}
      <mesh
        geometry={band}
        material={material}
        {...(onPress === undefined
          ? {}
          : { onPointerDown: (event: ThreeEvent<PointerEvent>) => event.button === 0 && onPress(event) })}
      />
    </group>
  );
}
