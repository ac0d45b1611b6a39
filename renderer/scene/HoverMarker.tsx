import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { type Mesh, Vector3 } from 'three';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { placeAt } from '../state/layPlaces.ts';
import { useBench } from '../state/useBench.ts';

const FORWARD = new Vector3(0, 0, 1);

/** A ring round the hose at the place pointed at, here or on the straight view. Moves itself; React draws it once. */
export function HoverMarker({ lays, colour }: { lays: readonly Lay[]; colour: string }) {
  const ring = useRef<Mesh>(null);
  const { hover } = useBench();
  const invalidate = useThree((three) => three.invalidate);
  useEffect(() => {
    const move = (): void => {
      const mesh = ring.current;
      if (mesh === null) return;
      const { place } = hover.getState();
      const lay = place === null ? undefined : lays.find((l) => l.run === place.run);
      const at = lay === undefined || place === null ? null : placeAt(lay.centreline, place.arcLengthMm);
      mesh.visible = at !== null;
      if (at !== null && lay !== undefined) {
        mesh.position.set(...at.point);
        mesh.quaternion.setFromUnitVectors(FORWARD, new Vector3(...at.along));
        mesh.scale.setScalar(lay.outsideDiameterMm / 2 + 5);
      }
      invalidate();
    };
    move();
    return hover.subscribe(move);
  }, [hover, lays, invalidate]);
  return (
    <mesh ref={ring} visible={false} renderOrder={25}>
      <torusGeometry args={[1, 0.14, 10, 40]} />
      <meshBasicMaterial color={colour} depthTest={false} transparent />
    </mesh>
  );
}
