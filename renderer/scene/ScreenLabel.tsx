import { type ThreeEvent, useThree } from '@react-three/fiber';
import { PerspectiveCamera, SpriteMaterial, Vector2 } from 'three';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Label } from './three/labelTexture.ts';
import { useDisposed } from './useDisposed.ts';

interface ScreenLabelProps {
  readonly label: Label;
  readonly at: Vec3;
  /** which point of the label stands on the place, 0 to 1 from its lower left */
  readonly foot: readonly [number, number];
  readonly order: number;
  readonly onClick?: () => void;
}

/** A label of a fixed size on the screen, standing on a place of the bay and never hidden by it. */
export function ScreenLabel({ label, at, foot, order, onClick }: ScreenLabelProps) {
  const heightPx = useThree((three) => three.size.height);
  const camera = useThree((three) => three.camera);
  const fovDeg = camera instanceof PerspectiveCamera ? camera.fov : 50;
  const unitsPerPx = (2 * Math.tan((fovDeg * Math.PI) / 360)) / heightPx;
  const material = useDisposed(
    () => new SpriteMaterial({ map: label.texture, depthTest: false, sizeAttenuation: false, toneMapped: false }),
    [label],
  );
  const click = (event: ThreeEvent<MouseEvent>): void => {
    event.stopPropagation();
    onClick?.();
  };
  return (
    <sprite
      material={material}
      position={[...at]}
      center={new Vector2(...foot)}
      scale={[label.widthPx * unitsPerPx, label.heightPx * unitsPerPx, 1]}
      renderOrder={order}
      {...(onClick === undefined ? {} : { onClick: click })}
    />
  );
}
