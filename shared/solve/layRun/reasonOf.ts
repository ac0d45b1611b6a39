import { RADIUS_RELATIVE, SAME_POINT_MM } from '../../base/tolerances.ts';
import { radiansToDegrees } from '../../base/units.ts';
import type { Clearance, Lay, Thing } from '../../document/lay/schema.ts';
import type { Fall } from '../search/fall.ts';
import type { Candidate } from './candidate.ts';
import type { Pinch } from './pinchAt.ts';
import type { RunSetting } from './runSetting.ts';

/** Why a lay is not clean: the constraint it breaks worst, in one sentence with its number. pinchedAt: between what, where it comes too near. */
export function reasonOf(
  lay: Lay,
  candidate: Candidate,
  setting: RunSetting,
  pinchedAt: (near: Clearance) => Pinch | undefined,
): string {
  const tight = lay.minRadius.limitMm - lay.minRadius.provenAtLeastMm;
  const near = worstClearance(lay);
  const shortMm = near === undefined ? 0 : near.requiredMm - near.clearanceMm;
  if (!candidate.shape.settled)
    return 'the hose did not come to rest in this place: lead it another way or hold it with a clamp';
  const { fall } = setting.character;
  if (fall !== undefined && shortMm <= 0 && tight <= lay.minRadius.limitMm * RADIUS_RELATIVE)
    return `a drain has to fall at least ${rounded(leastFallDeg(fall))} degrees all the way, and no hose between these ends does: lower or turn the outlet, or the port it drains to`;
  const missingMm = shortByMm(setting, lay.tautLengthMm);
  if (setting.cutLengthMm !== undefined && missingMm > SAME_POINT_MM)
    return `a hose cut to ${rounded(setting.cutLengthMm)} mm is too short by ${rounded(missingMm)} mm even pulled taut; the lay shown is the taut one`;
  if (near !== undefined && shortMm > 0 && shortMm >= tight) return roomReason(near, pinchedAt(near));
  if (tight > lay.minRadius.limitMm * RADIUS_RELATIVE)
    return `bends to ${rounded(lay.minRadius.provenAtLeastMm)} mm where the hose allows ${rounded(lay.minRadius.limitMm)} mm: it wants a smaller hose, another end angle or more room`;
  return 'keeps its limits only with less straight hose next to an end than the rule wants';
}

/** How much a hose already cut lacks to the taut lay, mm; 0 or less where it reaches, or where none is cut yet. */
export function shortByMm(setting: RunSetting, tautLiveMm: number): number {
  if (setting.cutLengthMm === undefined) return 0;
  return tautLiveMm + setting.a.end.shoulderToMouthMm + setting.b.end.shoulderToMouthMm - setting.cutLengthMm;
}

function roomReason(near: Clearance, pinch: Pinch | undefined): string {
  const name = nameOf(near.to);
  const missingMm = pinch?.missingMm ?? near.requiredMm - near.clearanceMm;
  const other = pinch === undefined ? name : nameOf(pinch.other);
  const where =
    pinch === undefined ? `at ${name}` : other === name ? `in a gap of ${name}` : `between ${name} and ${other}`;
  return `needs ${rounded(missingMm)} mm more room ${where}: ${rounded(near.clearanceMm)} mm to ${name} there, ${rounded(near.requiredMm)} mm wanted`;
}

function leastFallDeg({ leastSin }: Fall): number {
  return radiansToDegrees(Math.asin(leastSin));
}

function worstClearance(lay: Lay): Clearance | undefined {
  return lay.clearances.reduce<Clearance | undefined>(
    (worst, c) =>
      worst === undefined || c.clearanceMm - c.requiredMm < worst.clearanceMm - worst.requiredMm ? c : worst,
    undefined,
  );
}

function nameOf(thing: Thing): string {
  return thing.kind === 'run' ? `run ${thing.id}` : (thing.part ?? thing.id);
}

function rounded(mm: number): string {
  return (Math.round(mm * 10) / 10).toString();
}
