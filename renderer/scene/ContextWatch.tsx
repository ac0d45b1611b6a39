import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Vector3 } from 'three';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { placeAt } from '../state/layPlaces.ts';
import { useBench } from '../state/useBench.ts';
import { isAtRest } from './three/patientRenderer.ts';

/** What a test or a fault report may ask of the picture. */
export interface SceneProbe {
  readonly trianglesDrawn: number;
  readonly framesDrawn: number;
  /** all that was asked for is drawn, as fine as it gets */
  readonly atRest: boolean;
  readonly selectedRun: string | null;
  readonly hoverArcLengthMm: number | null;
  /** where the place pointed at is in the window, px */
  readonly hoverPx: readonly [number, number] | null;
  /** where the middle of the chosen run's hose is in the window, px */
  readonly hoseMiddlePx: readonly [number, number] | null;
}

declare global {
  interface Window {
    __hosewright?: {
      scene(): SceneProbe;
      /** where a place of the bay, mm, is in the window, px */
      placePx(point: Vec3): readonly [number, number];
    };
  }
}

/** Tells the window when the picture is lost and when it is back, and lends tests a small probe. */
export function ContextWatch() {
  const gl = useThree((three) => three.gl);
  const invalidate = useThree((three) => three.invalidate);
  const camera = useThree((three) => three.camera);
  const { session, hover, document: bay } = useBench();
  useEffect(() => {
    const canvas = gl.domElement;
    const lost = (event: Event): void => {
      event.preventDefault();
      session.set({ picture: 'lost' });
    };
    const restored = (): void => {
      session.set({ picture: 'drawn' });
      invalidate();
    };
    canvas.addEventListener('webglcontextlost', lost);
    canvas.addEventListener('webglcontextrestored', restored);
    const placePx = (point: Vec3): readonly [number, number] => {
      const seen = new Vector3(...point).project(camera);
      const box = canvas.getBoundingClientRect();
      return [box.left + ((seen.x + 1) / 2) * box.width, box.top + ((1 - seen.y) / 2) * box.height];
    };
    const layOf = (run: string | null) => bay.getState().open?.report?.lays.find((lay) => lay.run === run);
    const hosePx = (lay: Lay | undefined, arcLengthMm: number): readonly [number, number] | null => {
      const place = lay === undefined ? null : placeAt(lay.centreline, arcLengthMm);
      return place === null ? null : placePx(place.point);
    };
    const hoseMiddlePx = (): readonly [number, number] | null => {
      const lay = layOf(session.getState().run);
      return hosePx(lay, (lay?.cutLengthMm ?? 0) / 2);
    };
    const hoverPx = (): readonly [number, number] | null => {
      const { place } = hover.getState();
      return place === null ? null : hosePx(layOf(place.run), place.arcLengthMm);
    };
    window.__hosewright = {
      placePx,
      scene: () => ({
        trianglesDrawn: gl.info.render.triangles,
        framesDrawn: gl.info.render.frame,
        atRest: isAtRest(gl),
        selectedRun: session.getState().run,
        hoseMiddlePx: hoseMiddlePx(),
        hoverArcLengthMm: hover.getState().place?.arcLengthMm ?? null,
        hoverPx: hoverPx(),
      }),
    };
    return () => {
      canvas.removeEventListener('webglcontextlost', lost);
      canvas.removeEventListener('webglcontextrestored', restored);
      delete window.__hosewright;
    };
  }, [gl, camera, invalidate, session, hover, bay]);
  return null;
}
