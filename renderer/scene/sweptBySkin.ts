import type { Project, Skin } from '../../shared/document/project/schema.ts';
import { skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import { sweepOfSkin } from '../../shared/document/project/sweepOfSkin.ts';
import { sweptSurface } from '../../shared/geometry/sweep/withSweeps.ts';
import type { OpenDocument } from '../state/documentStore.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** Corners of the triangles of all that the parts of a skin sweep, x, y, z, mm; `null` where it does not move or has no parts. */
export function sweptBySkin(bay: Bay, project: Project, skin: Skin): Float32Array | null {
  const sweep = sweepOfSkin(skin);
  if (sweep === undefined) return null;
  const lists = bay.parts
    .filter(({ name, triangleCount }) => triangleCount > 0 && skinOfPart(project, name).id === skin.id)
    .map((part) => sweptSurface(bay, part, sweep).corners);
  const corners = new Float32Array(lists.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const list of lists) {
    corners.set(list, at);
    at += list.length;
  }
  return corners.length === 0 ? null : corners;
}
