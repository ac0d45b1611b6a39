import { BufferAttribute, BufferGeometry, DoubleSide, MeshBasicMaterial } from 'three';
import { useStore } from 'zustand';
import { useBench } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { useDisposed } from './useDisposed.ts';

const OPACITY = 0.34;
/** After the bay's see-through parts; its depth first, so that surfaces behind one another do not add up. */
const ORDER = { depth: 4, colour: 5 };

/** What the moving skin whose values are open sweeps, translucent: hoses keep clear of all of it. */
export function SweptSkin({ palette }: { readonly palette: ScenePalette }) {
  const corners = useStore(useBench().onSweep, (state) => state.corners);
  return corners === null || corners.length === 0 ? null : <Swept corners={corners} palette={palette} />;
}

function Swept({ corners, palette }: { readonly corners: Float32Array; readonly palette: ScenePalette }) {
  const geometry = useDisposed(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(corners, 3));
    return made;
  }, [corners]);
  const materials = useDisposed(() => {
    const depth = new MeshBasicMaterial({ side: DoubleSide, colorWrite: false, transparent: true });
    const colour = new MeshBasicMaterial({
      color: palette.selected,
      side: DoubleSide,
      transparent: true,
      opacity: OPACITY,
      depthWrite: false,
    });
    const dispose = (): void => {
      depth.dispose();
      colour.dispose();
    };
    return { depth, colour, dispose };
  }, [palette]);
  return (
    <group>
      <mesh geometry={geometry} material={materials.depth} renderOrder={ORDER.depth} />
      <mesh geometry={geometry} material={materials.colour} renderOrder={ORDER.colour} />
    </group>
  );
}
