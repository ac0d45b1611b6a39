import type { Finding, Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject } from '../../document/project/resolve.ts';
import { CHECK_NAMES, type CheckName } from '../../document/wording/findingWords.ts';
import { asBuilt, tolerance } from './asBuilt.ts';
import { assembly } from './assembly.ts';
import { bendRadius } from './bendRadius.ts';
import { breathing } from './breathing.ts';
import { bundlePressure } from './bundlePressure.ts';
import { chafe } from './chafe.ts';
import type { Check } from './check.ts';
import { clampFits } from './clampFits.ts';
import { clampFoot } from './clampFoot.ts';
import { clampHeat } from './clampHeat.ts';
import { clampPlace } from './clampPlace.ts';
import { clampPressure } from './clampPressure.ts';
import { clampSpacing } from './clampSpacing.ts';
import { clearance } from './clearance.ts';
import { coolantHighPoint } from './coolantHighPoint.ts';
import { crimp } from './crimp.ts';
import { drainCapacity } from './drainCapacity.ts';
import { drainEntry } from './drainEntry.ts';
import { drainFall } from './drainFall.ts';
import { drainLean } from './drainLean.ts';
import { drippedOn } from './drippedOn.ts';
import { endMetals } from './endMetals.ts';
import { endRoom } from './endRoom.ts';
import { engineSlack } from './engineSlack.ts';
import { firewall } from './firewall.ts';
import { firstSupport } from './firstSupport.ts';
import { flowSpeed } from './flowSpeed.ts';
import { fluidCore } from './fluidCore.ts';
import { fuelMarking } from './fuelMarking.ts';
import { heatDistance } from './heatDistance.ts';
import { heatEstimate } from './heatEstimate.ts';
import { hoseClamps } from './hoseClamps.ts';
import { hoseLife } from './hoseLife.ts';
import { inspection } from './inspection.ts';
import { jointAccess } from './jointAccess.ts';
import { laid } from './laid.ts';
import { onePlane } from './onePlane.ts';
import { passThrough } from './passThrough.ts';
import { pressureDrop } from './pressureDrop.ts';
import { pressureRating } from './pressureRating.ts';
import { proof } from './proof.ts';
import { pushOn } from './pushOn.ts';
import { rigidLine } from './rigidLine.ts';
import { rock } from './rock.ts';
import { secondWrench } from './secondWrench.ts';
import { selfContact } from './selfContact.ts';
import { slack } from './slack.ts';
import { staticCharge } from './staticCharge.ts';
import { straightTail } from './straightTail.ts';
import { suctionBend } from './suctionBend.ts';
import { suctionPressure } from './suctionPressure.ts';
import { systemTested } from './systemTested.ts';
import { taperRange } from './taperRange.ts';
import { temperatureRating } from './temperatureRating.ts';
import { turboDrainEnds } from './turboDrainEnds.ts';
import { turboFeed } from './turboFeed.ts';
import { turboWater } from './turboWater.ts';
import { vacuumKnown } from './vacuumKnown.ts';
import { wiring } from './wiring.ts';
import { wrenchAccess } from './wrenchAccess.ts';

/** Every check under the name of its function. A new check is one file, a line here, and its words. */
export const CHECKS: Readonly<Record<CheckName, Check>> = {
  laid,
  bendRadius,
  selfContact,
  straightTail,
  endRoom,
  wrenchAccess,
  secondWrench,
  jointAccess,
  slack,
  breathing,
  tolerance,
  asBuilt,
  crimp,
  proof,
  rock,
  taperRange,
  clearance,
  heatDistance,
  heatEstimate,
  chafe,
  wiring,
  clampSpacing,
  clampPlace,
  clampFoot,
  clampFits,
  clampHeat,
  engineSlack,
  firstSupport,
  passThrough,
  hoseClamps,
  rigidLine,
  systemTested,
  firewall,
  assembly,
  drainFall,
  drainLean,
  turboDrainEnds,
  drainEntry,
  turboFeed,
  turboWater,
  coolantHighPoint,
  suctionBend,
  suctionPressure,
  flowSpeed,
  pressureDrop,
  drainCapacity,
  onePlane,
  bundlePressure,
  clampPressure,
  pressureRating,
  vacuumKnown,
  pushOn,
  fluidCore,
  drippedOn,
  fuelMarking,
  hoseLife,
  inspection,
  endMetals,
  temperatureRating,
  staticCharge,
};

/** The checks that read no path, so that they speak also of a run with no way. */
const WITHOUT_PATH: readonly CheckName[] = [
  'laid',
  'crimp',
  'proof',
  'turboDrainEnds',
  'bundlePressure',
  'pressureRating',
  'vacuumKnown',
  'pushOn',
  'fluidCore',
  'fuelMarking',
  'hoseLife',
  'inspection',
  'temperatureRating',
  'staticCharge',
];

/**
 * Checks lays against their project: findings in the project's order of runs, then in the order of `CHECK_NAMES`. Lays of
 * runs that the project does not have are passed over; so are runs without a lay, which are not laid, not faultless.
 * today: `YYYY-MM-DD`, of the host; without it no hose is told to be too old.
 */
export function runChecks(resolved: ResolvedProject, lays: readonly Lay[], today?: string): Finding[] {
  const { project } = resolved;
  return resolved.runs.flatMap((run) => {
    const lay = lays.find((l) => l.run === run.run.id);
    if (lay === undefined) return [];
    const hasPath = lay.outcome !== 'no-way' && lay.centreline.points.length > 1;
    const names = CHECK_NAMES.filter((name) => hasPath || WITHOUT_PATH.includes(name));
    return names.flatMap((name) => CHECKS[name]({ project, run, lay, ...(today === undefined ? {} : { today }) }));
  });
}
