import type { RandomSource } from '../../base/random.ts';
import { addScaled, unit, type Vec3 } from '../../base/vec3.ts';
import { connectionPath, connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import { joinPaths, partOfPath, poseOnPath } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';

/** Tries to find a clear kick. */
const MOST_TRIES = 24;
/** Largest shift of a kicked place in radii, and the largest turn of its heading (as the length of a vector added to it). */
const SHIFT_RADII = 0.8;
const TURN = 0.9;
/** Least and largest share of the way on either side of the kicked place that is laid anew. */
const LEAST_SHARE = 0.08;
const MOST_SHARE = 0.35;

/**
 * A clear way a little beside a known one: one of its places is shifted and turned at random, and joined to the way before
 * and after it by arc-straight-arc connections. Longer, mostly; to be shortened again, by which it may come to lie shorter
 * than the first. undefined where no such way was clear.
 */
export function kickedAside(
  space: ClearSpace,
  { path, lengthMm, fromClockRad, toClockRad }: Candidate,
  radiusMm: number,
  random: RandomSource,
): Candidate | undefined {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const share = (): number => LEAST_SHARE + (MOST_SHARE - LEAST_SHARE) * random();
    const at = random() * lengthMm;
    const before = Math.max(0, at - share() * lengthMm);
    const after = Math.min(lengthMm, at + share() * lengthMm);
    const place = poseOnPath(path, at);
    const via = {
      point: addScaled(place.point, randomVector(random), SHIFT_RADII * radiusMm),
      direction: unit(addScaled(place.direction, randomVector(random), TURN)),
    };
    const [from, to] = [poseOnPath(path, before), poseOnPath(path, after)];
    const there = connectWithShortTurns(from, via, radiusMm);
    const on = connectWithShortTurns(via, to, radiusMm);
    if (!there || !on) continue;
    const middle = joinPaths(connectionPath(from, via, there), connectionPath(via, to, on));
    if (!isPathClear(space, middle)) continue;
    const head = before > 0 ? joinPaths(partOfPath(path, 0, before), middle) : middle;
    const whole = after < lengthMm ? joinPaths(head, partOfPath(path, after, lengthMm)) : head;
    return candidateOf(whole, fromClockRad, toClockRad);
  }
  return undefined;
}

/** Within the unit ball, short ones as likely as long ones. */
function randomVector(random: RandomSource): Vec3 {
  const z = 2 * random() - 1;
  const turn = 2 * Math.PI * random();
  const size = random();
  const flat = size * Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), size * z];
}
