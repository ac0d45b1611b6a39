import { RADIUS_RELATIVE, SAME_POINT_MM } from '../../base/tolerances.ts';
import { radiansToDegrees } from '../../base/units.ts';
import type { Clearance, Lay, LaySupport, Thing } from '../../document/lay/schema.ts';
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
  if (tight > lay.minRadius.limitMm * RADIUS_RELATIVE) return tightReason(lay, setting);
  return 'keeps its limits only with less straight hose next to an end than the rule wants';
}

/** Why a hose that keeps its radius and every clearance is a near miss: it has less slack than is wanted. */
export function noRoomForSlack(lay: Lay, setting: RunSetting): string {
  const [wanted, has] = [setting.slack, lay.slack].map((share) => rounded(100 * share));
  return `there is no room for ${wanted} % of slack: with ${has} %, as it is shown, it keeps its radius and every clearance`;
}

/** A bend that is too tight between two clamps, or a clamp and an end, is mended by those. */
function tightReason(lay: Lay, setting: RunSetting): string {
  const { provenAtLeastMm, limitMm, at } = lay.minRadius;
  const holds = lay.supports.filter(({ kind }) => kind !== 'waypoint');
  const before = holds.filter((s) => s.at.arcLengthMm <= at.arcLengthMm).at(-1);
  const after = holds.find((s) => s.at.arcLengthMm > at.arcLengthMm);
  const allows = `where the hose allows ${rounded(limitMm)} mm`;
  if (before === undefined || after === undefined)
    return `bends to ${rounded(provenAtLeastMm)} mm ${allows}: it wants a smaller hose, another end angle or more room`;
  const [from, to] = [before, after].map((s) => holdName(setting, s));
  const apartMm = after.at.arcLengthMm - before.at.arcLengthMm;
  return `bends to ${rounded(provenAtLeastMm)} mm between ${from} and ${to} ${allows}: they hold it ${rounded(apartMm)} mm apart, and want to stand further apart or more in line`;
}

function holdName({ supports }: RunSetting, { id, proposed }: LaySupport): string {
  return proposed ? 'a proposed clamp' : (supports.find((s) => s.id === id)?.name ?? id);
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
