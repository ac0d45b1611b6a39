import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  Group,
  Line,
  LineBasicMaterial,
  Mesh,
  MeshBasicMaterial,
  SphereGeometry,
} from 'three';
import { onAxis } from '../state/onRod.ts';
import { useBench } from '../state/useBench.ts';
import { useDisposed } from './useDisposed.ts';

/** mm. A bead that stands out on a rod of any thickness. */
const BEAD_MM = 3.2;

/** The points picked along a bent rod, on its axis, joined in their order. Draws itself; React makes it once. */
export function RodInBay({ colour }: { colour: string }) {
  const { onRod } = useBench();
  const invalidate = useThree((three) => three.invalidate);
  const rod = useDisposed(() => beadedLine(colour), [colour]);
  useEffect(() => {
    const draw = (): void => {
      const { picks, diameterMm } = onRod.getState();
      rod.show(picks.map((pick) => onAxis(pick, diameterMm)));
      invalidate();
    };
    draw();
    return onRod.subscribe(draw);
  }, [onRod, rod, invalidate]);
  return <primitive object={rod.group} />;
}

function beadedLine(color: string) {
  const group = new Group();
  const bead = new SphereGeometry(BEAD_MM, 14, 10);
  const skin = new MeshBasicMaterial({ color, depthTest: false, transparent: true });
  const ink = new LineBasicMaterial({ color, depthTest: false, transparent: true });
  const line = new Line(new BufferGeometry(), ink);
  line.renderOrder = 24;
  line.frustumCulled = false;
  return {
    group,
    show: (points: readonly (readonly [number, number, number])[]): void => {
      group.clear();
      line.geometry.dispose();
      line.geometry = new BufferGeometry();
      line.geometry.setAttribute('position', new BufferAttribute(new Float32Array(points.flat()), 3));
      if (points.length > 1) group.add(line);
      for (const at of points) {
        const mesh = new Mesh(bead, skin);
        mesh.position.set(...at);
        mesh.renderOrder = 25;
        group.add(mesh);
      }
    },
    dispose: (): void => {
      line.geometry.dispose();
      bead.dispose();
      skin.dispose();
      ink.dispose();
    },
  };
}
