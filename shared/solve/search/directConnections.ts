import { distance } from '../../base/vec3.ts';
import { connectionPath, connectPoses, connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import { type ArcLinePath, pathLengthMm } from '../../geometry/arcLinePath.ts';
import { nearConnections, nearLengthMm } from '../../geometry/freeShortest/nearConnections.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';
import type { EndPose } from './endPoses.ts';

/** How many of the shortest connections are tried. */
const MOST_TRIED = 64;
/** Farther apart than this many radii, no shorter curve than arc-straight-arc was met (400 seeded pairs: up to 4.5). */
const NEAR_RADII = 6;
/** Of the pairs of end poses that are near to each other, curves of many arcs are sought for so many of the most promising. */
const MOST_NEAR_PAIRS = 6;

export interface DirectConnection {
  readonly candidate: Candidate;
  /** nothing that was tried is shorter, clear or not: no way need be looked for that is */
  readonly isShortest: boolean;
}

interface Joined {
  readonly start: EndPose;
  readonly goal: EndPose;
  readonly lengthMm: number;
  readonly path: () => ArcLinePath;
}

/**
 * The shortest clear connection between any start and any goal as if nothing stood between, among the `MOST_TRIED` shortest:
 * arc-straight-arc, and for ends too near for that with short turns, the curves of `nearConnections`.
 */
export function shortestDirectConnection(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
): DirectConnection | undefined {
  const all: Joined[] = [];
  const near: { start: EndPose; goal: EndPose }[] = [];
  for (const start of starts) {
    for (const goal of goals) {
      const short = connectWithShortTurns(start.pose, goal.pose, radiusMm);
      const connection = short ?? connectPoses(start.pose, goal.pose, radiusMm);
      if (connection) {
        const path = (): ArcLinePath => connectionPath(start.pose, goal.pose, connection);
        all.push({ start, goal, lengthMm: connection.lengthMm, path });
      }
      const apart = distance(start.pose.point, goal.pose.point);
      if (!short && apart < NEAR_RADII * radiusMm) near.push({ start, goal });
    }
  }
  all.push(...nearJoined(near, radiusMm, Math.min(...all.map(({ lengthMm }) => lengthMm))));
  all.sort((a, b) => a.lengthMm - b.lengthMm);
  for (const [i, { start, goal, path }] of all.slice(0, MOST_TRIED).entries()) {
    const tried = path();
    if (!isPathClear(space, tried)) continue;
    return { candidate: candidateOf(tried, start.clockRad, goal.clockRad), isShortest: i === 0 };
  }
  return undefined;
}

/** Curves of many arcs between the pairs that promise the shortest ones; with more than one pair, only what may beat `knownMm`. */
function nearJoined(pairs: readonly { start: EndPose; goal: EndPose }[], radiusMm: number, knownMm: number): Joined[] {
  const chosen =
    pairs.length === 1
      ? pairs
      : pairs
          .filter(({ start, goal }) => distance(start.pose.point, goal.pose.point) < knownMm)
          .map((pair) => ({ ...pair, aboutMm: nearLengthMm(pair.start.pose, pair.goal.pose, radiusMm) ?? knownMm }))
          .filter(({ aboutMm }) => aboutMm < knownMm)
          .sort((a, b) => a.aboutMm - b.aboutMm)
          .slice(0, MOST_NEAR_PAIRS);
  return chosen.flatMap(({ start, goal }) =>
    nearConnections(start.pose, goal.pose, radiusMm).map((path) => ({
      start,
      goal,
      lengthMm: pathLengthMm(path),
      path: () => path,
    })),
  );
}
