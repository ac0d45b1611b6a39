import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { type Material, Plane, Vector3 } from 'three';
import { scale, type Vec3 } from '../../shared/base/vec3.ts';
import { CUT_LEAVES_MM, type SectionState } from '../state/sectionStore.ts';
import { useBench } from '../state/useBench.ts';

/** Cuts what these materials draw as the section says, and answers its request for a plane that faces the eye. */
export function SectionPlanes({ materials }: { materials: readonly Material[] }) {
  const { section } = useBench();
  const gl = useThree((three) => three.gl);
  const camera = useThree((three) => three.camera);
  const invalidate = useThree((three) => three.invalidate);
  useEffect(() => {
    const cut = (): void => {
      const planes = planesOf(section.getState());
      gl.localClippingEnabled = true;
      for (const material of materials) material.clippingPlanes = planes;
      invalidate();
    };
    cut();
    return section.subscribe(cut);
  }, [section, materials, gl, invalidate]);
  useEffect(
    () =>
      section.subscribe(({ asked }, before) => {
        if (asked === null || asked === before.asked) return;
        const { x, y, z } = camera.getWorldDirection(new Vector3());
        section.setPlane({ point: asked.through, away: [-x, -y, -z] });
      }),
    [section, camera],
  );
  return null;
}

/** What stays lies in front of every plane. */
function planesOf({ plane, box }: SectionState): Plane[] {
  const cuts = plane === null ? [] : [facing(scale(plane.away, -1), plane.point)];
  if (box === null) return cuts;
  const axes: readonly Vec3[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  return [...cuts, ...axes.flatMap((axis) => [facing(axis, box.low), facing(scale(axis, -1), box.high)])];
}

function facing(normal: Vec3, point: Vec3): Plane {
  const cut = new Plane().setFromNormalAndCoplanarPoint(new Vector3(...normal), new Vector3(...point));
  cut.constant += CUT_LEAVES_MM;
  return cut;
}
