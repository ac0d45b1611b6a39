import type { RandomSource } from '../../base/random.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { connectionPath, connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import { joinPaths, partOfPath, poseOnPath } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';
import { type EndPose, endPoseAt, standsClear } from './endPoses.ts';
import type { SearchProblem } from './problem.ts';

/** A shortcut must save this share of the whole length to be worth a splice. */
const LEAST_GAIN = 1e-5;
/** Share of the tries that put a turning end to another clock. */
const CLOCK_SHARE = 0.3;

/**
 * Shortens a clear way by random shortcuts: two places on it are joined by an arc-straight-arc connection where that is
 * shorter and clear; at turning ends the end's clock is drawn anew as well, near the present one or anywhere. Stops after
 * `mostFailures` tries in a row without gain. The way never gets longer and never leaves the clear space.
 */
export function shortenByShortcuts(
  space: ClearSpace,
  problem: Pick<SearchProblem, 'from' | 'to' | 'minRadiusMm'>,
  candidate: Candidate,
  random: RandomSource,
  mostFailures: number,
  watch: Watch,
): Candidate {
  let best = candidate;
  for (let failures = 0; failures < mostFailures; failures++) {
    if (failures % 16 === 0) stopIfCancelled(watch);
    const better = shortcut(space, problem, best, random);
    if (!better) continue;
    best = better;
    failures = -1;
  }
  return best;
}

function shortcut(
  space: ClearSpace,
  problem: Pick<SearchProblem, 'from' | 'to' | 'minRadiusMm'>,
  { path, lengthMm, fromClockRad, toClockRad }: Candidate,
  random: RandomSource,
): Candidate | undefined {
  const u = random() * lengthMm;
  const v = random() * lengthMm;
  const turning = random() < CLOCK_SHARE;
  const atStart = turning && random() < 0.5;
  let fromMm = Math.min(u, v);
  let toMm = Math.max(u, v);
  let start: EndPose = { clockRad: fromClockRad, pose: path.start };
  let goal: EndPose | undefined;
  if (turning && atStart && problem.from.kind === 'turning') {
    start = endPoseAt(problem.from, fromClockRad + clockChange(random));
    fromMm = 0;
  } else if (turning && !atStart && problem.to.kind === 'turning') {
    goal = endPoseAt(problem.to, toClockRad + clockChange(random));
    toMm = lengthMm;
  }
  const from = fromMm === 0 ? start.pose : poseOnPath(path, fromMm);
  const to = goal ? goal.pose : poseOnPath(path, toMm);
  const connection = connectWithShortTurns(from, to, problem.minRadiusMm);
  if (!connection || connection.lengthMm > toMm - fromMm - LEAST_GAIN * lengthMm) return undefined;
  const middle = connectionPath(from, to, connection);
  if (turning && !standsClear(atStart ? problem.from : problem.to, (atStart ? start : (goal ?? start)).clockRad))
    return undefined;
  if (!isPathClear(space, middle)) return undefined;
  const head = fromMm === 0 ? middle : joinPaths(partOfPath(path, 0, fromMm), middle);
  const whole = toMm === lengthMm ? head : joinPaths(head, partOfPath(path, toMm, lengthMm));
  return candidateOf(whole, start.clockRad, goal ? goal.clockRad : toClockRad);
}

/** Half the draws anywhere round the clock, half near by, nearer ones likelier. */
function clockChange(random: RandomSource): number {
  const turn = (random() * 2 - 1) * Math.PI;
  return random() < 0.5 ? turn : turn * random() ** 3;
}
