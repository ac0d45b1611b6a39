import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { BufferAttribute, BufferGeometry, Line, LineDashedMaterial, type Mesh } from 'three';
import { useBench } from '../state/useBench.ts';
import { useDisposed } from './useDisposed.ts';

/** Where the hand is, and a thread from there to where the hose is held. Moves itself; React draws it once. */
export function HandThread({ colour }: { colour: string }) {
  const { hand } = useBench();
  const bead = useRef<Mesh>(null);
  const invalidate = useThree((three) => three.invalidate);
  const thread = useDisposed(() => dashedLine(colour), [colour]);
  useEffect(() => {
    const move = (): void => {
      const { hold, shape } = hand.getState();
      const on = hold !== null && 'arcLengthMm' in hold.at;
      thread.line.visible = on;
      if (bead.current !== null) bead.current.visible = on;
      if (on) {
        const held = shape?.hold?.point ?? hold.to;
        bead.current?.position.set(...hold.to);
        thread.line.geometry.setAttribute('position', new BufferAttribute(new Float32Array([...hold.to, ...held]), 3));
        thread.line.computeLineDistances();
      }
      invalidate();
    };
    move();
    return hand.subscribe(move);
  }, [hand, thread, invalidate]);
  return (
    <>
      <primitive object={thread.line} />
      <mesh ref={bead} visible={false} renderOrder={26}>
        <sphereGeometry args={[4, 20, 14]} />
        <meshBasicMaterial color={colour} depthTest={false} transparent />
      </mesh>
    </>
  );
}

function dashedLine(color: string): { line: Line; dispose(): void } {
  const geometry = new BufferGeometry();
  const material = new LineDashedMaterial({ color, dashSize: 5, gapSize: 3, depthTest: false, transparent: true });
  const line = new Line(geometry, material);
  line.renderOrder = 26;
  line.frustumCulled = false;
  line.visible = false;
  return {
    line,
    dispose: () => {
      geometry.dispose();
      material.dispose();
    },
  };
}
