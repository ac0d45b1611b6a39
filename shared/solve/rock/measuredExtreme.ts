import { radiansToDegrees } from '../../base/units.ts';
import type { Clearance, RockExtreme, RockPose } from '../../document/lay/schema.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import { leastRadius } from '../../geometry/curveLimits.ts';
import { movePoint } from '../../geometry/rigidMotion.ts';
import { drawnLine } from '../layRun/centreline.ts';
import { clearanceTo } from '../layRun/measureClearances.ts';
import { type Neighbour, runNeighbour } from '../layRun/neighbours.ts';
import { endRoomThen } from './endRoomThen.ts';
import type { HeldHose } from './heldHose.ts';
import { movedNeighbours } from './movedBay.ts';
import { nearestFirst } from './nearestFirst.ts';
import type { RockedHose } from './rockedHose.ts';
import { rubsAt } from './rubsAt.ts';
import { runsAround, type Surroundings } from './surroundings.ts';

/** Relative. How far below the found least radius its proof may lie. */
const RADIUS_PROOF = 0.0002;
/** mm. A hose with no bend has no radius; this instead of infinity, which JSON cannot hold. */
const STRAIGHT_RADIUS_MM = 1e6;
/** mm. How far below the found clearance its proof may lie: motions of mounts are not known finer. */
const CLEARANCE_PROOF_MM = 0.2;

/**
 * What is told of a hose at an extreme. A hose that is carried whole keeps its shape and its distance to what carries
 * it; so it is measured to everything else only, and its least radius is the one it was laid with.
 */
export function measuredExtreme(hose: HeldHose, rocked: RockedHose, pose: RockPose, around: Surroundings): RockExtreme {
  const { curve } = rocked;
  const rubs = rubsAt(hose, rocked, around);
  const endRoom = endRoomThen(hose, around.bays, rocked.motions);
  return {
    pose,
    ...measuredHose(hose, rocked, around),
    ...(endRoom === undefined ? {} : { endRoom }),
    ...(rubs.length === 0 ? {} : { rubs }),
    ...(curve === undefined ? {} : { line: drawnLine(curve) }),
  };
}

/**
 * What is told of a hose at an extreme once one more hose lies there: the same as `measuredExtreme` among all of them.
 * told: among the hoses without that one. others: that one. order: all runs, as their hoses are measured.
 */
export function withOneMore(
  hose: HeldHose,
  rocked: RockedHose,
  told: RockExtreme,
  others: Pick<Surroundings, 'project' | 'others'>,
  order: readonly string[],
): RockExtreme {
  const around = { ...others, bays: [] };
  const tightest = tightestOf(hose, rocked, around, told.tightest);
  const place = ({ to }: Clearance): number => (to.kind === 'run' ? order.indexOf(to.id) : -1);
  const rubs = [...(told.rubs ?? []), ...rubsAt(hose, rocked, around)].sort((p, q) => place(p) - place(q));
  return {
    ...told,
    ...(tightest === undefined ? {} : { tightest }),
    ...(rubs.length === 0 ? {} : { rubs }),
  };
}

/** What is told of a hose whose holds have moved, wherever they moved to. */
export function measuredHose(hose: HeldHose, rocked: RockedHose, around: Surroundings): Omit<RockExtreme, 'pose'> {
  const { outcome, slackLeftMm, missingMm, tensionN, twistRad, torqueNmm } = rocked;
  const tightest = rocked.curve === undefined ? undefined : tightestOf(hose, rocked, around);
  const minRadius = leastRadiusOf(hose, rocked);
  return {
    outcome,
    slackLeftMm,
    ...(missingMm === undefined ? {} : { missingMm }),
    ...(minRadius === undefined ? {} : { minRadius }),
    ...(tightest === undefined ? {} : { tightest }),
    ...(tensionN === undefined ? {} : { tensionN }),
    ...(twistRad === undefined ? {} : { twistDeg: radiansToDegrees(twistRad) }),
    ...(torqueNmm === undefined ? {} : { torqueNmm }),
  };
}

function leastRadiusOf(hose: HeldHose, { curve, motions }: RockedHose): RockExtreme['minRadius'] {
  if (curve === undefined) return undefined;
  if (hose.carriedBy !== undefined) {
    const { provenAtLeastMm, at } = hose.taken.lay.minRadius;
    const [x, y, z] = movePoint(motions(hose.carriedBy), at.point);
    return { provenAtLeastMm, at: { arcLengthMm: at.arcLengthMm, point: [x, y, z] } };
  }
  const least = leastRadius(curve, RADIUS_PROOF);
  const [x, y, z] = least.point;
  return {
    provenAtLeastMm: Math.min(least.provenAtLeast, STRAIGHT_RADIUS_MM),
    at: { arcLengthMm: least.arcLengthMm, point: [x, y, z] },
  };
}

/**
 * The clearance that has least over what is asked; things that a look from place to place shows to be further are let be.
 * known: the one to other things.
 */
function tightestOf(
  hose: HeldHose,
  { curve, motions, setting }: RockedHose,
  around: Surroundings,
  known?: Clearance,
): Clearance | undefined {
  const { project, bays, others } = around;
  if (curve === undefined) return undefined;
  const { run } = setting;
  const moving = bays.filter(({ body }) => body !== hose.carriedBy);
  const neighbours: Neighbour[] = [
    ...movedNeighbours(project, run, moving, motions),
    ...runsAround(around).map((other) =>
      runNeighbour(others, other, requiredRunClearance(project, run, other).requiredMm),
    ),
  ];
  const over = (c: Clearance): number => c.clearanceMm - c.requiredMm;
  let tightest = known;
  for (const { neighbour, leastMm } of nearestFirst(setting, curve, neighbours)) {
    if (tightest !== undefined && leastMm > over(tightest)) break;
    for (const c of clearanceTo(setting, curve, neighbour, CLEARANCE_PROOF_MM))
      if (tightest === undefined || over(c) < over(tightest)) tightest = c;
  }
  return tightest;
}
