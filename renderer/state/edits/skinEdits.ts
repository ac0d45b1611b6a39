import {
  PLAIN_SKIN,
  type Project,
  type Skin,
  type SkinMaterial,
  type SkinSweep,
} from '../../../shared/document/project/schema.ts';
import { skinOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { freshId } from './freshId.ts';
import { withPartIn } from './partGroups.ts';

/** Puts a part of the bay into a skin, or into none (`null`). `parts`: names of all parts of the bay. */
export function setPartSkin(project: Project, part: string, skinId: string | null, parts: readonly string[]): Project {
  if (skinOfPart(project, part).id === (skinId ?? PLAIN_SKIN.id)) return project;
  return { ...project, bay: { ...project.bay, skins: withPartIn(project.bay.skins, part, skinId, parts) } };
}

export type NewSkin = Pick<Skin, 'name' | 'kind' | 'surfaceTemperatureC'>;

/** Adds a skin without parts, at the end. */
export function addSkin(project: Project, skin: NewSkin): { readonly project: Project; readonly id: string } {
  const id = freshId(skin.name, 'skin', [...project.bay.skins, PLAIN_SKIN]);
  const skins = [...project.bay.skins, { ...skin, id, parts: [] }];
  return { project: { ...project, bay: { ...project.bay, skins } }, id };
}

/** Changes what a skin is. A hot skin needs its temperature: without one nothing changes. `null` takes a value away. */
export function changeSkin(
  project: Project,
  skinId: string,
  change: {
    readonly name?: string;
    readonly kind?: Skin['kind'];
    readonly surfaceTemperatureC?: number;
    readonly clearanceMm?: number | null;
    readonly emissivity?: number | null;
    readonly material?: SkinMaterial | null;
    readonly sweep?: SkinSweep | null;
  },
): Project {
  const skins = project.bay.skins.map((skin) => (skin.id === skinId ? changed(skin, change) : skin));
  const same = skins.every((skin, i) => JSON.stringify(skin) === JSON.stringify(project.bay.skins[i]));
  return same ? project : { ...project, bay: { ...project.bay, skins } };
}

function changed(
  skin: Skin,
  { clearanceMm, emissivity, material, sweep, ...change }: Parameters<typeof changeSkin>[2],
): Skin {
  const {
    clearanceMm: own,
    emissivity: shine,
    surfaceTemperatureC,
    material: metal,
    sweep: way,
    ...next
  } = {
    ...skin,
    ...change,
  };
  if (next.kind === 'hot' && surfaceTemperatureC === undefined) return skin;
  const emits = emissivity === undefined ? shine : (emissivity ?? undefined);
  const clearance = clearanceMm === undefined ? own : (clearanceMm ?? undefined);
  const madeOf = material === undefined ? metal : (material ?? undefined);
  const moves = sweep === undefined ? way : (sweep ?? undefined);
  return {
    ...next,
    ...(madeOf === undefined ? {} : { material: madeOf }),
    ...(next.kind === 'moving' && moves !== undefined ? { sweep: moves } : {}),
    ...(next.kind === 'hot' && surfaceTemperatureC !== undefined ? { surfaceTemperatureC } : {}),
    ...(next.kind === 'hot' && emits !== undefined ? { emissivity: emits } : {}),
    ...(clearance === undefined ? {} : { clearanceMm: clearance }),
  };
}

/** Takes a skin away: its parts are plain then, or what a later skin makes of them. */
export function removeSkin(project: Project, skinId: string): Project {
  return { ...project, bay: { ...project.bay, skins: project.bay.skins.filter(({ id }) => id !== skinId) } };
}
