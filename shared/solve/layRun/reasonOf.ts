import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { Clearance, Lay } from '../../document/lay/schema.ts';
import type { Candidate } from './findShape.ts';
import type { RunSetting } from './runSetting.ts';

/** Why a lay is not clean: the constraint it breaks worst, in one sentence with its number. */
export function reasonOf(lay: Lay, candidate: Candidate, setting: RunSetting): string {
  const tight = lay.minRadius.limitMm - lay.minRadius.provenAtLeastMm;
  const near = worstClearance(lay);
  const shortMm = near === undefined ? 0 : near.requiredMm - near.clearanceMm;
  if (!candidate.shape.settled)
    return 'the hose did not come to rest in this place: lead it another way or hold it with a clamp';
  if (setting.cutLengthMm !== undefined && setting.cutLengthMm > 0 && lay.slack < 0)
    return `the hose of ${rounded(setting.cutLengthMm)} mm is too short: taut it would need ${rounded(lay.cutLengthMm - lay.liveLengthMm + lay.tautLengthMm)} mm`;
  if (near !== undefined && shortMm > 0 && shortMm >= tight)
    return `needs ${rounded(shortMm)} mm more room at ${nameOf(near)}: ${rounded(near.clearanceMm)} mm there, ${rounded(near.requiredMm)} mm wanted`;
  if (tight > lay.minRadius.limitMm * RADIUS_RELATIVE)
    return `bends to ${rounded(lay.minRadius.provenAtLeastMm)} mm where the hose allows ${rounded(lay.minRadius.limitMm)} mm: it wants a smaller hose, another end angle or more room`;
  return 'keeps its limits only with less straight hose next to an end than the rule wants';
}

function worstClearance(lay: Lay): Clearance | undefined {
  return lay.clearances.reduce<Clearance | undefined>(
    (worst, c) =>
      worst === undefined || c.clearanceMm - c.requiredMm < worst.clearanceMm - worst.requiredMm ? c : worst,
    undefined,
  );
}

function nameOf(clearance: Clearance): string {
  return clearance.to.kind === 'run' ? `run ${clearance.to.id}` : (clearance.to.part ?? clearance.to.id);
}

function rounded(mm: number): string {
  return (Math.round(mm * 10) / 10).toString();
}
