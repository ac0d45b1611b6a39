import { LineBasicMaterial } from 'three';
import { PLAIN_SKIN, type Skin } from '../../shared/document/project/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import type { PartView } from '../state/sessionStore.ts';
import { useSession } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { bayGeometry, type PartGeometry } from './three/bayGeometry.ts';
import { skinMaterial } from './three/skinMaterial.ts';
import { useDisposed } from './useDisposed.ts';

interface BayMeshProps {
  readonly bay: NonNullable<OpenDocument['bay']>;
  readonly skins: readonly Skin[];
  readonly palette: ScenePalette;
}

/** The bay: every part in the look of its skin, shown, see-through or taken off. */
export function BayMesh({ bay, skins, palette }: BayMeshProps) {
  const geometry = useDisposed(() => bayGeometry(bay), [bay]);
  const materials = useDisposed(() => bayMaterials(palette, geometry.flat), [palette, geometry.flat]);
  const views = useSession((session) => session.parts);
  const seeThrough = useSession((session) => session.seeThrough);
  const kindOf = new Map(skins.map((skin) => [skin.id, skin.kind]));
  return geometry.parts.map((part, i) => {
    const chosen = views[part.name] ?? 'shown';
    const view: PartView = seeThrough && chosen === 'shown' ? 'ghost' : chosen;
    const kind = kindOf.get(part.skin) ?? PLAIN_SKIN.kind;
    // biome-ignore lint/suspicious/noArrayIndexKey: a scan may name two parts alike; their order never changes
    return <BayPart key={i} part={part} view={view} materials={materials} kind={kind} />;
  });
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
  const ghostEdge = new LineBasicMaterial({
    color: palette.edge,
    transparent: true,
    opacity: palette.edgeOpacity * 0.25,
  });
  const dispose = (): void => {
    for (const material of [...solid.values(), ...ghost.values(), edge, ghostEdge]) material.dispose();
  };
  return { solid, ghost, edge, ghostEdge, dispose };
}

interface BayPartProps {
  readonly part: PartGeometry;
  readonly view: PartView;
  readonly kind: Skin['kind'];
  readonly materials: BayMaterials;
}

function BayPart({ part, view, kind, materials }: BayPartProps) {
  const material = (view === 'ghost' ? materials.ghost : materials.solid).get(kind);
  if (view === 'off' || material === undefined) return null;
  return (
    <group>
      <mesh geometry={part.surface} material={material} renderOrder={view === 'ghost' ? 2 : 0} />
      {part.edges !== null && (
        <lineSegments geometry={part.edges} material={view === 'ghost' ? materials.ghostEdge : materials.edge} />
      )}
    </group>
  );
}
