import { type Connection, connectionPath, connectPoses } from '../../geometry/arcLineConnector.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';
import type { EndPose } from './endPoses.ts';

/** How many of the shortest connections are tried. */
const MOST_TRIED = 64;

/** The shortest clear arc-straight-arc connection between any start and any goal, among the `MOST_TRIED` shortest. */
export function shortestDirectConnection(
  space: ClearSpace,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
): Candidate | undefined {
  const all: { start: EndPose; goal: EndPose; connection: Connection }[] = [];
  for (const start of starts) {
    for (const goal of goals) {
      const connection = connectPoses(start.pose, goal.pose, radiusMm);
      if (connection) all.push({ start, goal, connection });
    }
  }
  all.sort((a, b) => a.connection.lengthMm - b.connection.lengthMm);
  for (const { start, goal, connection } of all.slice(0, MOST_TRIED)) {
    const path = connectionPath(start.pose, goal.pose, connection);
    if (isPathClear(space, path)) return candidateOf(path, start.clockRad, goal.clockRad);
  }
  return undefined;
}
