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
import { useBench } from '../state/useBench.ts';
import { useDisposed } from './useDisposed.ts';

/** mm. A bead that is seen on any part. */
const BEAD_MM = 3.5;

/** The places that are measured between, or by which the bay is levelled, and the line from one to the next. Draws itself. */
export function MeasureInBay({ colour }: { colour: string }) {
  const { onMeasure, onSquareUp } = useBench();
  const invalidate = useThree((three) => three.invalidate);
  const drawn = useDisposed(() => beadsAndLine(colour), [colour]);
  useEffect(() => {
    const draw = (): void => {
      const { from, to } = onMeasure.getState();
      const { picks } = onSquareUp.getState();
      const [first] = picks;
      const face = picks.length === 3 && first !== undefined ? [...picks, first] : picks;
      drawn.show(picks.length > 0 ? face : [from, to].flatMap((place) => (place === null ? [] : [place.point])));
      invalidate();
    };
    draw();
    const unsubscribe = [onMeasure.subscribe(draw), onSquareUp.subscribe(draw)];
    return () => {
      for (const stop of unsubscribe) stop();
    };
  }, [onMeasure, onSquareUp, drawn, invalidate]);
  return <primitive object={drawn.group} />;
}

function beadsAndLine(color: string) {
  const group = new Group();
  const bead = new SphereGeometry(BEAD_MM, 16, 12);
  const fill = new MeshBasicMaterial({ color, depthTest: false, transparent: true });
  const ink = new LineBasicMaterial({ color, depthTest: false, transparent: true });
  const line = new Line(new BufferGeometry(), ink);
  line.renderOrder = 27;
  line.frustumCulled = false;
  const show = (points: readonly (readonly [number, number, number])[]): void => {
    group.clear();
    for (const at of points) {
      const mesh = new Mesh(bead, fill);
      mesh.position.set(...at);
      mesh.renderOrder = 28;
      group.add(mesh);
    }
    if (points.length < 2) return;
    line.geometry.setAttribute('position', new BufferAttribute(new Float32Array(points.flat()), 3));
    group.add(line);
  };
  const dispose = (): void => {
    line.geometry.dispose();
    bead.dispose();
    fill.dispose();
    ink.dispose();
  };
  return { group, show, dispose };
}
