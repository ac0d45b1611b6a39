import { useMemo } from 'react';
import {
  Color,
  DoubleSide,
  LineBasicMaterial,
  type Material,
  Matrix4,
  MeshStandardMaterial,
  SRGBColorSpace,
  Vector3,
} from 'three';
import { useStore } from 'zustand';
import { motionsAt } from '../../shared/document/lay/motionsAt.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Project, Skin } from '../../shared/document/project/schema.ts';
import { bodyOfPart, skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import type { RigidMotion } from '../../shared/geometry/rigidMotion.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { heatColour } from '../state/heatScale.ts';
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
  readonly lays: readonly Lay[];
  readonly palette: ScenePalette;
}

/** The bay: every part in the look of its skin, shown, see-through or taken off; its bodies where the shown pose has them. */
export function BayMesh({ bay, project, lays, palette }: BayMeshProps) {
  const geometry = useDisposed(() => bayGeometry(bay), [bay]);
  const materials = useDisposed(() => bayMaterials(palette, geometry.flat), [palette, geometry.flat]);
  const views = useSession((session) => session.parts);
  const seeThrough = useSession((session) => session.seeThrough);
  const { hand } = useBench();
  const moved = useMotions(project, lays);
  const heated = useSession((session) => session.heat !== null);
  const hot = useDisposed(() => hotMaterials(project, heated), [project.bay.skins, heated]);
  const aimed = useStore(hand, ({ tool, aim }) =>
    tool.kind === 'skin' || tool.kind === 'body' ? aim?.part : undefined,
  );
  const parts = geometry.parts.map((part, i) => {
    const chosen = views[part.name] ?? 'shown';
    const view: PartView = seeThrough && chosen === 'shown' ? 'ghost' : chosen;
    const { kind, id } = skinOfPart(project, part.name);
    return (
      <BayPart
        // biome-ignore lint/suspicious/noArrayIndexKey: a scan may name two parts alike; their order never changes
        key={i}
        part={part}
        view={view}
        materials={materials}
        kind={kind}
        aimed={part.name === aimed}
        hot={hot.bySkin.get(id)}
        motion={moved(bodyOfPart(project, part.name).id)}
      />
    );
  });
  return (
    <>
      {parts}
      <SectionPlanes materials={materials.all} />
      {heated && <SectionPlanes materials={hot.all} />}
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
  /** in the colour of its temperature; absent = in the look of its skin */
  readonly hot?: Material | undefined;
  /** where its body stands */
  readonly motion: Matrix4;
}

function BayPart({ part, view, kind, materials, aimed, motion, hot }: BayPartProps) {
  const own = (view === 'ghost' ? materials.ghost : materials.solid).get(kind);
  const material = view === 'ghost' ? own : (hot ?? own);
  const edge = aimed ? materials.aimedEdge : view === 'ghost' ? materials.ghostEdge : materials.edge;
  if (view === 'off' || material === undefined) return null;
  return (
    <group matrix={motion} matrixAutoUpdate={false}>
      <mesh geometry={part.surface} material={material} renderOrder={view === 'ghost' ? 2 : 0} />
      {part.edges !== null && <lineSegments geometry={part.edges} material={edge} />}
    </group>
  );
}

/** One material for each hot skin, in the colour of its temperature; none while the bay is in its own looks. */
function hotMaterials({ bay }: Project, heated: boolean) {
  const bySkin = new Map(
    (heated ? bay.skins : []).flatMap(({ id, surfaceTemperatureC }) => {
      if (surfaceTemperatureC === undefined) return [];
      const [r, g, b] = heatColour(surfaceTemperatureC);
      const color = new Color().setRGB(r / 255, g / 255, b / 255, SRGBColorSpace);
      return [[id, new MeshStandardMaterial({ color, roughness: 0.9, side: DoubleSide })] as const];
    }),
  );
  const all = [...bySkin.values()];
  const dispose = (): void => {
    for (const material of all) material.dispose();
  };
  return { bySkin, all, dispose };
}

const STILL = new Matrix4();

/** Where each body of the bay stands in the pose that is shown. */
function useMotions(project: Project, lays: readonly Lay[]): (body: string) => Matrix4 {
  const shown = useSession((session) => session.pose);
  return useMemo(() => {
    const extreme =
      shown?.kind === 'rock' ? lays.find(({ rock }) => rock !== undefined)?.rock?.extremes[shown.extreme] : undefined;
    if (extreme === undefined) return () => STILL;
    const motions = motionsAt(project, extreme.pose, 1);
    const matrices = new Map(extreme.pose.bodies.map(({ body }) => [body, matrixOf(motions(body))]));
    return (body: string) => matrices.get(body) ?? STILL;
  }, [shown, lays, project]);
}

function matrixOf({ axes: [x, y, z], shift }: RigidMotion): Matrix4 {
  return new Matrix4().makeBasis(new Vector3(...x), new Vector3(...y), new Vector3(...z)).setPosition(...shift);
}
