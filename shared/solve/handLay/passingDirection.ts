import { addScaled, anySquareTo, cross, distance, unit, type Vec3 } from '../../base/vec3.ts';
import { connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';

/** First and last step of the look for the best direction, as the tangent of the angle: 17 degrees down to a quarter. */
const FIRST_STEP = 0.3;
const LAST_STEP = 0.004;
/** Looks round about at most: each step is kept as long as it helps. */
const MOST_LOOKS = 60;

/** Length of the arc-straight-arc line between two poses, mm; without one, as far as they are apart and half a turn more. */
function connectionLengthMm(from: Pose, to: Pose, radiusMm: number): number {
  return connectWithShortTurns(from, to, radiusMm)?.lengthMm ?? distance(from.point, to.point) + Math.PI * radiusMm;
}

/**
 * The direction in which the shortest line of two arc-straight-arc connections, from one pose through a place to another,
 * passes that place. start: a direction to begin with. Pattern search on the sphere; within a quarter of a degree of a
 * least length, which moves the length by less than 0.01 mm.
 */
export function passingDirection(from: Pose, through: Vec3, to: Pose, radiusMm: number, start: Vec3): Vec3 {
  const lengthBy = (direction: Vec3): number => {
    const middle: Pose = { point: through, direction };
    return connectionLengthMm(from, middle, radiusMm) + connectionLengthMm(middle, to, radiusMm);
  };
  let best = start;
  let least = lengthBy(start);
  let step = FIRST_STEP;
  for (let look = 0; look < MOST_LOOKS && step > LAST_STEP; look++) {
    const side = anySquareTo(best);
    const other = cross(best, side);
    let found = false;
    for (const [u, v] of AROUND) {
      const direction = unit(addScaled(addScaled(best, side, step * u), other, step * v));
      const mm = lengthBy(direction);
      if (mm >= least) continue;
      [best, least, found] = [direction, mm, true];
      break;
    }
    if (!found) step /= 2;
  }
  return best;
}

/** Ways to turn aside. */
const AROUND = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;
