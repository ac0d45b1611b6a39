import { distance } from '../../base/vec3.ts';
import { connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import { joinPaths, partOfPath, pathLengthMm, poseOnPath } from '../../geometry/arcLinePath.ts';
import { nearConnections, nearLengthMm } from '../../geometry/freeShortest/nearConnections.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';

/** Stretches looked at, as shares of the way: the whole, and parts of it from either end and in the middle. */
const STRETCHES: readonly (readonly [number, number])[] = [
  [0, 1],
  [0, 0.8],
  [0.2, 1],
  [0.1, 0.9],
  [0, 0.6],
  [0.4, 1],
  [0.2, 0.8],
];
/** Stretches whose ends are farther apart than this many radii are left to arc-straight-arc shortcuts. */
const NEAR_RADII = 4;
/** A stretch has to get shorter by this share to be worth it. */
const LEAST_GAIN = 0.005;

/**
 * A way whose loops between places near to each other are the shortest ones (`nearConnections`), where those are clear: no
 * arc-straight-arc shortcut with short turns joins such places, and moving corners one by one does not find these shapes.
 */
export function withNearShortcuts(space: ClearSpace, candidate: Candidate, radiusMm: number): Candidate {
  let best = candidate;
  for (const [first, last] of STRETCHES) {
    const { path, lengthMm } = best;
    const [fromMm, toMm] = [first * lengthMm, last * lengthMm];
    const [from, to] = [poseOnPath(path, fromMm), poseOnPath(path, toMm)];
    const enoughMm = (toMm - fromMm) * (1 - LEAST_GAIN);
    if (distance(from.point, to.point) > Math.min(NEAR_RADII * radiusMm, enoughMm)) continue;
    if (connectWithShortTurns(from, to, radiusMm)) continue;
    if (!((nearLengthMm(from, to, radiusMm) ?? 0) < enoughMm)) continue;
    const middle = nearConnections(from, to, radiusMm).find(
      (near) => pathLengthMm(near) < enoughMm && isPathClear(space, near),
    );
    if (!middle) continue;
    const head = fromMm > 0 ? joinPaths(partOfPath(path, 0, fromMm), middle) : middle;
    const whole = toMm < lengthMm ? joinPaths(head, partOfPath(path, toMm, lengthMm)) : head;
    best = candidateOf(whole, candidate.fromClockRad, candidate.toClockRad);
  }
  return best;
}
