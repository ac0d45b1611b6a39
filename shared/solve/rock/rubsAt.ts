import type { Clearance } from '../../document/lay/schema.ts';
import { isBareBraid, isSawedByBraid } from '../../document/project/sawedByBraid.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { clearanceTo } from '../layRun/measureClearances.ts';
import { type Neighbour, runNeighbour } from '../layRun/neighbours.ts';
import type { RunSetting } from '../layRun/runSetting.ts';
import type { HeldHose } from './heldHose.ts';
import { movedNeighbours } from './movedBay.ts';
import type { RockedHose } from './rockedHose.ts';
import { runsAround, type Surroundings } from './surroundings.ts';

/** mm. Spacing of the places looked at before something is measured. */
const LOOK_STEP_MM = 10;
/** mm. How far the proof of a clearance may lie below it, as for everything at an extreme. */
const PROOF_MM = 0.2;

/**
 * What bare steel braid comes near to at an extreme that it saws: skins and other hoses within `chafe-rock`, scan uncertainty
 * on top. None for hoses with another outside, and none of the body that carries the hose whole: there nothing rubs.
 */
export function rubsAt(hose: HeldHose, { curve, motions, setting }: RockedHose, around: Surroundings): Clearance[] {
  const { project, bays, others } = around;
  if (curve === undefined || !isBareBraid(hose.resolved)) return [];
  const { run } = setting;
  const nearMm = ruleValue(project, 'chafe-rock', run).value + project.bay.scanUncertaintyMm;
  const softer = bays
    .filter(({ body }) => body !== hose.carriedBy)
    .map(({ body, bay }) => ({ body, bay: { ...bay, skins: bay.skins.filter(({ skin }) => isSawedByBraid(skin)) } }));
  return [
    ...movedNeighbours(project, run, softer, motions),
    ...runsAround(around).map((other) =>
      runNeighbour(others, other, requiredRunClearance(project, run, other).requiredMm),
    ),
  ]
    .filter((thing) => comesWithin(setting, curve, thing, nearMm))
    .flatMap((thing) => clearanceTo(setting, curve, thing, PROOF_MM))
    .filter(({ clearanceMm }) => clearanceMm < nearMm);
}

/** Whether it may: distances change by no more than the way between two places. */
function comesWithin(setting: RunSetting, curve: CubicCurve, thing: Neighbour, mm: number): boolean {
  const lengthMm = curveLengthMm(curve);
  const steps = Math.max(1, Math.ceil(lengthMm / LOOK_STEP_MM));
  const withinMm = setting.outsideRadiusMm + mm + LOOK_STEP_MM / 2;
  return Array.from({ length: steps + 1 }, (_, i) => curveAt(curve, (lengthMm * i) / steps).point).some(
    (point) => thing.distanceTo(point, withinMm) < withinMm,
  );
}
