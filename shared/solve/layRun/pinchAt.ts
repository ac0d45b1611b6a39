import { addScaled, dot, length, sub, unit, type Vec3 } from '../../base/vec3.ts';
import type { Clearance, Thing } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { askedDistanceMm } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { neighboursOf } from './neighbours.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';

/** What keeps a hose from being moved clear of a thing, and how much room is missing between the two. */
export interface Pinch {
  readonly other: Thing;
  readonly missingMm: number;
}

/**
 * Between what a hose is pinched where it comes too near to a thing: were it moved straight away from that until it is clear, what it
 * would then be nearest to against what is asked, and what it would lack there, mm: what the gap lacks. Undefined where it could be
 * moved so, or meets something aside of its way first, as in a corner: then it is not a gap that is too narrow. near: the breach, of a lay in this setting, bay frame, mm.
 */
export function pinchAt(
  project: Project,
  setting: RunSetting,
  bay: BayIndex,
  others: TubeField,
  near: Clearance,
): Pinch | undefined {
  const shortMm = near.requiredMm - near.clearanceMm;
  const away = sub(near.at.point, near.onThing);
  // A hose that goes through a thing lies in no gap.
  if (shortMm <= 0 || length(away) < THROUGH_MM) return undefined;
  const moved: Vec3 = addScaled(near.at.point, unit(away), shortMm);
  const held = heldPlaces(setting);
  let worst: { missingMm: number; other?: Thing } | undefined;
  for (const to of neighboursOf(project, setting.run, bay, others)) {
    const asked = askedDistanceMm(setting.outsideRadiusMm + to.requiredMm, held, moved);
    const missingMm = asked - to.distanceTo(moved, asked);
    if (missingMm <= LEAST_MISSING_MM || missingMm <= (worst?.missingMm ?? 0)) continue;
    const { thing, onThing } = to.describe(moved);
    const towards = sub(onThing, moved);
    const isOpposite = length(towards) < THROUGH_MM || dot(unit(towards), unit(away)) > OPPOSITE_COSINE;
    worst = { missingMm, ...(isOpposite ? { other: thing } : {}) };
  }
  return worst?.other === undefined ? undefined : { missingMm: worst.missingMm, other: worst.other };
}

/** mm. A centreline this near to a surface runs through it. */
const THROUGH_MM = 1;
/** Of the angle off the way it is moved: what lies aside of that, as in a corner, makes no gap. */
const OPPOSITE_COSINE = 0.7;
/** mm. Less is not told. */
const LEAST_MISSING_MM = 0.1;
