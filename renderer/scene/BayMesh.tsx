import { LineBasicMaterial } from 'three';
import { useStore } from 'zustand';
import type { Project, Skin } from '../../shared/document/project/schema.ts';
import { skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import type { PartView } from '../state/sessionStore.ts';
import { useBench, useSession } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { SectionPlanes } from './SectionPlanes.tsx';
import { bayGeometry, type PartGeometry } from './three/bayGeometry.ts';
import { skinMaterial } from './three/skinMaterial.ts';
import { useDisposed } from './useDisposed.ts';

interface BayMeshProps {
  readonly bay: NonNullable<OpenDocument['bay']>;
  readonly project: Project;
  readonly palette: ScenePalette;
}

/** The bay: every part in the look of its skin, shown, see-through or taken off. */
export function BayMesh({ bay, project, palette }: BayMeshProps) {
  const geometry = useDisposed(() => bayGeometry(bay), [bay]);
  const materials = useDisposed(() => bayMaterials(palette, geometry.flat), [palette, geometry.flat]);
  const views = useSession((session) => session.parts);
  const seeThrough = useSession((session) => session.seeThrough);
  const { hand } = useBench();
  const aimed = useStore(hand, ({ tool, aim }) => (tool.kind === 'skin' ? aim?.part : undefined));
  const parts = geometry.parts.map((part, i) => {
    const chosen = views[part.name] ?? 'shown';
    const view: PartView = seeThrough && chosen === 'shown' ? 'ghost' : chosen;
    const { kind } = skinOfPart(project, part.name);
    // biome-ignore lint/suspicious/noArrayIndexKey: a scan may name two parts alike; their order never changes
    return <BayPart key={i} part={part} view={view} materials={materials} kind={kind} aimed={part.name === aimed} />;
  });
  return (
    <>
      {parts}
      <SectionPlanes materials={materials.all} />
    </>
  );
}

type BayMaterials = ReturnType<typeof bayMaterials>;

function bayMaterials(palette: ScenePalette, flat: boolean) {
  const kinds = Object.keys(palette.skins) as Skin['kind'][];
  const solid = new Map(kinds.map((kind) => [kind, skinMaterial(kind, palette.skins[kind], flat)]));
  const ghost = new Map(
    kinds.map((kind) => {
      const material = skinMaterial(kind, palette.skins[kind], flat);
      material.transparent = true;
      material.depthWrite = false;
      material.opacity = palette.ghostOpacity;
      return [kind, material];
    }),
  );
  const edge = new LineBasicMaterial({ color: palette.edge, transparent: true, opacity: palette.edgeOpacity });
  const aimedEdge = new LineBasicMaterial({ color: palette.selected });
  const ghostEdge = new LineBasicMaterial({
    color: palette.edge,
    transparent: true,
    opacity: palette.edgeOpacity * 0.25,
  });
  const all = [...solid.values(), ...ghost.values(), edge, aimedEdge, ghostEdge];
  const dispose = (): void => {
    for (const material of all) material.dispose();
  };
  return { all, solid, ghost, edge, aimedEdge, ghostEdge, dispose };
}

interface BayPartProps {
  readonly part: PartGeometry;
  readonly view: PartView;
  readonly kind: Skin['kind'];
  readonly materials: BayMaterials;
  /** the pointer is on it, and a press would put it into a skin */
  readonly aimed: boolean;
}

function BayPart({ part, view, kind, materials, aimed }: BayPartProps) {
  const material = (view === 'ghost' ? materials.ghost : materials.solid).get(kind);
  const edge = aimed ? materials.aimedEdge : view === 'ghost' ? materials.ghostEdge : materials.edge;
  if (view === 'off' || material === undefined) return null;
  return (
    <group>
      <mesh geometry={part.surface} material={material} renderOrder={view === 'ghost' ? 2 : 0} />
      {part.edges !== null && <lineSegments geometry={part.edges} material={edge} />}
    </group>
  );
}
