import { ROUNDING_MM } from '../../base/tolerances.ts';
import { curveAt } from '../../geometry/cubicCurve.ts';
import type { Candidate } from './candidate.ts';
import { leastApartMm } from './clampOnRoute.ts';
import { proposedIds } from './proposedIds.ts';
import type { RunSetting } from './runSetting.ts';
import type { HeldInSpan, ProposedClamp } from './spans.ts';

/**
 * The clamps of a hose and one more that holds it, as it lies, at a place along it or the nearest that is far enough from all
 * that holds it already. atMm: from shoulder A. Nothing where that is further off than clamps stand apart, or where a stretch of the
 * hose is locked.
 */
export function holdAt(setting: RunSetting, candidate: Candidate, atMm: number): readonly ProposedClamp[] | undefined {
  const { clamps, shape } = candidate;
  if (setting.locks !== undefined && setting.locks.length > 0) return undefined;
  const startMm = setting.a.end.shoulderToMouthMm + shape.tailMm.a;
  const endMm = setting.a.end.shoulderToMouthMm + shape.liveLengthMm - shape.tailMm.b;
  const heldIds = new Set(clamps.filter((c) => c.held !== undefined).map((c) => c.id));
  const placed = shape.holds.map((hold, i) => ({ id: hold.id, atMm: shape.holdsAtMm[i] as number }));
  const spansFromMm = [startMm, ...placed.filter(({ id }) => !heldIds.has(id)).map((hold) => hold.atMm)];
  const held = placed.filter(({ id }) => heldIds.has(id));
  if (spansFromMm.length + held.length !== shape.rods.length) return undefined;
  const free = freePlace(atMm, [startMm, ...placed.map((hold) => hold.atMm), endMm], leastApartMm(setting));
  if (free === undefined) return undefined;
  const inSpan = (placeMm: number): HeldInSpan => {
    const span = spansFromMm.findLastIndex((mm) => mm < placeMm);
    const fromMm = spansFromMm[span] as number;
    const { point, tangent } = curveAt(shape.curve, placeMm);
    const pose = { point, direction: tangent };
    return { span, atMm: placeMm - fromMm, ofMm: (spansFromMm[span + 1] ?? endMm) - fromMm, pose };
  };
  const alongMm = (placeMm: number): number => ((placeMm - startMm) / (endMm - startMm)) * candidate.route.lengthMm;
  const clampAt = (id: string, placeMm: number): ProposedClamp => ({
    id,
    alongMm: alongMm(placeMm),
    held: inSpan(placeMm),
  });
  const others = clamps.filter((c) => c.held === undefined);
  const [id] = proposedIds(setting, candidate.route, clamps, 1) as [string];
  const all = [...held, { id, atMm: free }].sort((p, q) => p.atMm - q.atMm);
  return [...others, ...all.map((hold) => clampAt(hold.id, hold.atMm))];
}

/** The place nearest to the wanted one that is as far from all taken as asked; none where that is further off than this again. */
function freePlace(wantedMm: number, takenMm: readonly number[], apartMm: number): number | undefined {
  const [first, last] = [Math.min(...takenMm), Math.max(...takenMm)];
  const candidates = [wantedMm, ...takenMm.flatMap((mm) => [mm - apartMm, mm + apartMm])].filter(
    (mm) => mm > first && mm < last && takenMm.every((taken) => Math.abs(taken - mm) >= apartMm - ROUNDING_MM),
  );
  const best = candidates.sort((p, q) => Math.abs(p - wantedMm) - Math.abs(q - wantedMm))[0];
  return best !== undefined && Math.abs(best - wantedMm) <= apartMm ? best : undefined;
}
