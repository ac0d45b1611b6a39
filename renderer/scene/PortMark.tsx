import type { ThreeEvent } from '@react-three/fiber';
import { useMemo } from 'react';
import { DoubleSide, Matrix4, Quaternion, Vector3 } from 'three';
import { cross, unit, type Vec3 } from '../../shared/base/vec3.ts';
import { upFor } from '../state/edits/portEdits.ts';

interface PortMarkProps {
  readonly at: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
  readonly radiusMm: number;
  readonly colour: string;
  readonly solid: boolean;
  readonly onPress?: (event: ThreeEvent<PointerEvent>) => void;
}

/** A washer on the seat with a pin along the axis and a tooth at 12 o'clock. */
export function PortMark({ at, axis, up, radiusMm, colour, solid, onPress }: PortMarkProps) {
  const turn = useMemo(() => standing(axis, up), [axis, up]);
  const look = (
    <meshBasicMaterial color={colour} side={DoubleSide} transparent opacity={solid ? 1 : 0.75} depthTest={!solid} />
  );
  return (
    <group
      position={[...at]}
      quaternion={turn}
      {...(onPress === undefined
        ? {}
        : { onPointerDown: (event: ThreeEvent<PointerEvent>) => event.button === 0 && onPress(event) })}
    >
      <mesh renderOrder={15}>
        <ringGeometry args={[radiusMm, radiusMm + 2.2, 40]} />
        {look}
      </mesh>
      <mesh renderOrder={15} position={[0, radiusMm + 5, 0]}>
        <circleGeometry args={[3.4, 3, Math.PI / 2]} />
        {look}
      </mesh>
      <mesh renderOrder={15} position={[0, 0, 14]} rotation={[Math.PI / 2, 0, 0]}>
        <cylinderGeometry args={[0.7, 0.7, 28, 10]} />
        {look}
      </mesh>
      <mesh renderOrder={15} position={[0, 0, 30]}>
        <sphereGeometry args={[2.4, 14, 10]} />
        {look}
      </mesh>
    </group>
  );
}

/** Turns z onto the axis and y onto 12 o'clock. */
function standing(axis: Vec3, up: Vec3): Quaternion {
  const z = unit(axis);
  const y = upFor(z, up);
  const x = cross(y, z);
  return new Quaternion().setFromRotationMatrix(
    new Matrix4().makeBasis(new Vector3(...x), new Vector3(...y), new Vector3(...z)),
  );
}
