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

function Swept({ bay, project, skin, palette }: SweptSkinProps & { readonly skin: Skin }) {
  const geometry = useDisposed(() => {
    const made = new BufferGeometry();
    const corners = sweptBySkin(bay, project, skin);
    made.setAttribute('position', new BufferAttribute(corners ?? new Float32Array(), 3));
    return made;
  }, [bay, project.bay.skins, skin]);
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
