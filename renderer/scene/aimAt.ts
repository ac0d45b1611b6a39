import { scale } from '../../shared/base/vec3.ts';
import { fitRim } from '../../shared/geometry/fitRim.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import type { Aim } from '../state/handStore.ts';
import { isCutAway, type SectionState } from '../state/sectionStore.ts';
import type { PartView } from '../state/sessionStore.ts';
import { type BayRay, pickBay } from './pickBay.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** The place of the bay under a look; what is cut away, and parts taken off or made see-through one by one, are looked through. */
export function aimAt(
  bay: Bay,
  ray: BayRay,
  views: Readonly<Record<string, PartView>>,
  section: Pick<SectionState, 'plane' | 'box'>,
): Aim | null {
  const isOff = (part: string): boolean => views[part] === 'off' || views[part] === 'ghost';
  const hit = pickBay(bay, ray, (part, at) => isOff(part) || isCutAway(section, at));
  return hit === null ? null : { ...hit, toEye: scale(ray.along, -1) };
}

/**
 * The same place with the round rim by it, or told that there is none. A rim looks to the eye: the wall of a bore, which is
 * seen through its mouth, has no side of its own. Some tenths of a second on a dense scan.
 */
export function withRim(bay: Bay, aim: Aim): Aim {
  const { point, normal, toEye = normal } = aim;
  return { ...aim, rim: fitRim(bay, point, toEye, { normal }) ?? null };
}
