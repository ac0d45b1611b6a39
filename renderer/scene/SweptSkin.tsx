import { useThree } from '@react-three/fiber';
import { useEffect, useState } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide, MeshBasicMaterial } from 'three';
import type { Project, Skin } from '../../shared/document/project/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { useSession } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { sweptBySkin } from './sweptBySkin.ts';
import { useDisposed } from './useDisposed.ts';

interface SweptSkinProps {
  readonly bay: NonNullable<OpenDocument['bay']>;
  readonly project: Project;
  readonly palette: ScenePalette;
}

/** What the moving skin whose values are open sweeps, translucent: hoses keep clear of all of it. */
export function SweptSkin({ project, ...shown }: SweptSkinProps) {
  const id = useSession((session) => (session.step === 'bay' ? session.skin : null));
  const skin = project.bay.skins.find((one) => one.id === id);
  if (skin?.sweep === undefined) return null;
  return <Swept key={skin.id} skin={skin} project={project} {...shown} />;
}

const OPACITY = 0.34;
/** After the bay's see-through parts; its depth first, so that surfaces behind one another do not add up. */
const ORDER = { depth: 4, colour: 5 };

/** ms without a further change of how it moves after which what it sweeps is worked out: up to a second of a great turn. */
const REST_MS = 160;
const NOTHING = new Float32Array();

/** Corners of what a skin sweeps, once it is let rest; those of before until then. */
function useSwept(bay: SweptSkinProps['bay'], project: Project, skin: Skin): Float32Array {
  const [corners, setCorners] = useState<Float32Array>(NOTHING);
  const invalidate = useThree((three) => three.invalidate);
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the project only its skins decide
  useEffect(() => {
    const rest = setTimeout(() => {
      setCorners(sweptBySkin(bay, project, skin) ?? NOTHING);
      invalidate();
    }, REST_MS);
    return () => clearTimeout(rest);
  }, [bay, project.bay.skins, skin, invalidate]);
  return corners;
}

function Swept({ bay, project, skin, palette }: SweptSkinProps & { readonly skin: Skin }) {
  const corners = useSwept(bay, project, skin);
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
  if (corners.length === 0) return null;
  return (
    <group>
      <mesh geometry={geometry} material={materials.depth} renderOrder={ORDER.depth} />
      <mesh geometry={geometry} material={materials.colour} renderOrder={ORDER.colour} />
    </group>
  );
}
