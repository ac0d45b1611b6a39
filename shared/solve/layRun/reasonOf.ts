import { RADIUS_RELATIVE, SAME_POINT_MM } from '../../base/tolerances.ts';
import { radiansToDegrees } from '../../base/units.ts';
import type { Breath, Clearance, Lay, LaySupport, Thing } from '../../document/lay/schema.ts';
import type { Fall } from '../search/fall.ts';
import { type Lack, shortByMm } from './lacksOf.ts';
import type { Pinch } from './pinchAt.ts';
import type { RunSetting } from './runSetting.ts';

/** What a lay does not tell of why it is not clean. */
export interface Why {
  /** between what it lies, where it comes too near */
  pinchedAt(near: Clearance): Pinch | undefined;
  /** the length under pressure at which it goes taut, where that is what it lacks */
  readonly tautBreath: Breath | undefined;
}

/** Why a lay is not clean: what it lacks most gravely, in one sentence with its number. */
export function reasonOf(lay: Lay, lacks: readonly Lack[], setting: RunSetting, why: Why): string {
  for (const lack of lacks) {
    const reason = sentenceOf(lack, lay, setting, why);
    if (reason !== undefined) return reason;
  }
  return Math.min(lay.straightTailMm.a, lay.straightTailMm.b) < setting.tailMm - SAME_POINT_MM
    ? 'keeps its limits only with less straight hose next to an end than the rule wants'
    : 'keeps its limits only where less than all of them is asked';
}

/** One lack in words; nothing where what was asked less of is kept all the same. */
function sentenceOf(lack: Lack, lay: Lay, setting: RunSetting, why: Why): string | undefined {
  switch (lack) {
    case 'rest':
      return 'the hose did not come to rest in this place: lead it another way or hold it with a clamp';
    case 'length':
      return `a hose cut to ${rounded(setting.cutLengthMm ?? 0)} mm is too short by ${rounded(shortByMm(setting, lay.tautLengthMm))} mm even pulled taut; the lay shown is the taut one`;
    case 'limits':
      return limitReason(lay, setting, why);
    case 'fall':
      return fallReason(setting.character.fall);
    case 'slack':
      return `there is no room for ${percent(setting.slack)} % of slack: with ${percent(lay.slack)} %, as it is shown, it keeps its radius and every clearance`;
    case 'breath':
      return breathReason(lay, why);
  }
}

/** Radius or clearance, whichever is missed by more. */
function limitReason(lay: Lay, setting: RunSetting, { pinchedAt }: Why): string | undefined {
  const tight = lay.minRadius.limitMm - lay.minRadius.provenAtLeastMm;
  const near = worstClearance(lay);
  const shortMm = near === undefined ? 0 : near.requiredMm - near.clearanceMm;
  if (near !== undefined && shortMm > 0 && shortMm >= tight) return roomReason(near, pinchedAt(near));
  return tight > lay.minRadius.limitMm * RADIUS_RELATIVE ? tightReason(lay, setting) : undefined;
}

function fallReason(fall: Fall | undefined): string | undefined {
  return (
    fall &&
    `a drain has to fall at least ${rounded(leastFallDeg(fall))} degrees all the way, and no hose between these ends does: lower or turn the outlet, or the port it drains to`
  );
}

/** A hose that goes taut at a length that pressure gives it: all of it, or only a stretch between two of its holds. */
function breathReason({ tautLengthMm, slack }: Lay, { tautBreath: taut }: Why): string | undefined {
  if (taut === undefined) return undefined;
  const when = `when pressure ${taut.change < 0 ? 'shortens' : 'lengthens'} it by ${percent(Math.abs(taut.change))} %`;
  const missingMm = tautLengthMm - taut.liveLengthMm;
  if (missingMm > 0)
    return `pulls taut ${when}: with ${percent(slack)} % of slack, as it is shown, it is ${rounded(missingMm)} mm too short then`;
  return `pulls taut ${when}: between its clamps, where they stand, it is too short then`;
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

/** A share in per cent. */
function percent(share: number): string {
  return rounded(100 * share);
}

function rounded(mm: number): string {
  return (Math.round(mm * 10) / 10).toString();
}
