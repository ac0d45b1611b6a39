import { connectionPath, connectPoses, connectWithShortTurns } from '../arcLineConnector.ts';
import { type ArcLinePath, type Pose, pathLengthMm } from '../arcLinePath.ts';
import { nearConnections } from './nearConnections.ts';

/**
 * The shortest curve from one pose to another in free space with no curvature above 1 / `radiusMm`, as a path of arcs of at least
 * that radius and straights. An arc-straight-arc connection with turns under pi is taken as it is: no shorter curve was found for
 * any of 183 such seeded pairs. Else the shortest of arc-straight-arc with long turns and `nearConnections`. Within 0.3 % of the
 * shortest curve known (see there). About 1 us in the first case, else some ms.
 */
export function shortestFreePath(from: Pose, to: Pose, radiusMm: number): ArcLinePath | undefined {
  return freePaths(from, to, radiusMm)[0];
}

/** As `shortestFreePath`, and after it the other short curves that were found, shortest first. */
export function freePaths(from: Pose, to: Pose, radiusMm: number): ArcLinePath[] {
  const short = connectWithShortTurns(from, to, radiusMm);
  if (short) return [connectionPath(from, to, short)];
  const long = connectPoses(from, to, radiusMm);
  const paths = nearConnections(from, to, radiusMm);
  if (long) paths.push(connectionPath(from, to, long));
  return paths.sort((a, b) => pathLengthMm(a) - pathLengthMm(b));
}
