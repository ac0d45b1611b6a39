import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { useBench } from '../state/useBench.ts';

/** What a test or a fault report may ask of the picture. */
export interface SceneProbe {
  readonly trianglesDrawn: number;
  readonly framesDrawn: number;
  readonly selectedRun: string | null;
  readonly hoverArcLengthMm: number | null;
}

declare global {
  interface Window {
    __hosewright?: { scene(): SceneProbe };
  }
}

/** Tells the window when the picture is lost and when it is back, and lends tests a small probe. */
export function ContextWatch() {
  const gl = useThree((three) => three.gl);
  const invalidate = useThree((three) => three.invalidate);
  const { session, hover } = useBench();
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
    window.__hosewright = {
      scene: () => ({
        trianglesDrawn: gl.info.render.triangles,
        framesDrawn: gl.info.render.frame,
        selectedRun: session.getState().run,
        hoverArcLengthMm: hover.getState().place?.arcLengthMm ?? null,
      }),
    };
    return () => {
      canvas.removeEventListener('webglcontextlost', lost);
      canvas.removeEventListener('webglcontextrestored', restored);
      delete window.__hosewright;
    };
  }, [gl, invalidate, session, hover]);
  return null;
}
