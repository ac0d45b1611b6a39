import type { CameraControls } from '@react-three/drei';
import { type ThreeEvent, useThree } from '@react-three/fiber';
import { useCallback } from 'react';
import { Raycaster, Vector2, Vector3 } from 'three';
import type { BayRay } from './pickBay.ts';

/** What a drag in the picture does. Rays are of the pointer, `eyeAlong` is the way the camera looks. */
export interface BayDrag {
  /** called once, when the pointer has gone further than a click's tremble */
  begin(): void;
  move(ray: BayRay, eyeAlong: BayRay['along'], event: PointerEvent): void;
  /** `moved` false = it was a click */
  end(moved: boolean, event: PointerEvent): void;
}

/** px that a click may tremble. */
const TREMBLE_PX = 4;

/** Begins a drag from a press on a shape; the camera stands still until the button is up. */
export function useBayDrag(): (press: ThreeEvent<PointerEvent>, drag: BayDrag) => void {
  const gl = useThree((three) => three.gl);
  const camera = useThree((three) => three.camera);
  const controls = useThree((three) => three.controls) as unknown as CameraControls | null;
  return useCallback(
    (press, drag) => {
      press.stopPropagation();
      const { clientX, clientY, pointerId } = press.nativeEvent;
      if (controls !== null) controls.enabled = false;
      document.documentElement.classList.add('dragging');
      let moved = false;
      const move = (event: PointerEvent): void => {
        if (event.pointerId !== pointerId) return;
        if (!moved && Math.hypot(event.clientX - clientX, event.clientY - clientY) <= TREMBLE_PX) return;
        if (!moved) drag.begin();
        moved = true;
        drag.move(rayAt(event, gl.domElement, camera), tuple(camera.getWorldDirection(new Vector3())), event);
      };
      const end = (event: PointerEvent): void => {
        if (event.pointerId !== pointerId) return;
        window.removeEventListener('pointermove', move);
        window.removeEventListener('pointerup', end);
        window.removeEventListener('pointercancel', end);
        document.documentElement.classList.remove('dragging');
        if (controls !== null) controls.enabled = true;
        drag.end(moved, event);
      };
      window.addEventListener('pointermove', move);
      window.addEventListener('pointerup', end);
      window.addEventListener('pointercancel', end);
    },
    [gl, camera, controls],
  );
}

type Camera = Parameters<Raycaster['setFromCamera']>[1];

/** The look into the bay under a pointer. */
export function rayAt(event: { clientX: number; clientY: number }, canvas: HTMLElement, camera: Camera): BayRay {
  const box = canvas.getBoundingClientRect();
  const caster = new Raycaster();
  caster.setFromCamera(
    new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2),
    camera,
  );
  return { from: tuple(caster.ray.origin), along: tuple(caster.ray.direction) };
}

function tuple({ x, y, z }: Vector3): [number, number, number] {
  return [x, y, z];
}
