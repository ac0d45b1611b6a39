import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { TaperPose } from '../../document/lay/schema.ts';
import type { RunSetting } from '../layRun/runSetting.ts';

/** mm, what a hose that does not reach or does not come to rest counts for over what is missing elsewhere. */
const NO_LAY_MM = 1000;

/** How much a hose lacks at a clock of its taper threads, mm of length, radius, clearance and room together; 0 = it fits. */
export function faultAtPose(
  setting: RunSetting,
  { outcome, slackLeftMm, minRadius, tightest, room }: TaperPose,
): number {
  const limit = setting.minRadiusMm * (1 - RADIUS_RELATIVE);
  return (
    (outcome === 'lies' ? 0 : NO_LAY_MM) +
    Math.max(0, -slackLeftMm) +
    Math.max(0, limit - (minRadius?.provenAtLeastMm ?? limit)) +
    Math.max(0, tightest === undefined ? 0 : tightest.requiredMm - tightest.clearanceMm) +
    Math.max(0, -(room.a?.roomMm ?? 0), -(room.b?.roomMm ?? 0))
  );
}
