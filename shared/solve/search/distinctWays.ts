import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import { type ArcLinePath, pathLengthMm, samplePath } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, clearSpace, isSegmentClear } from './clearSpace.ts';

/** Places compared on each path. */
const PLACES = 40;
/** mm of clearance not asked of the threads: two ways pressed against the same thing would else be called different */
const GIVEN_UP_MM = 4;

/**
 * Whether one path can be drawn over to the other without crossing what is blocked, as far as straight threads between
 * them show it: their places are paired off in order from both starts to both ends such that the straight between every
 * pair is clear. A pairing proves them the same way round everything; none found counts as different.
 */
export function passSameSides(exactSpace: ClearSpace, first: ArcLinePath, second: ArcLinePath): boolean {
  return goSameSides(exactSpace, places(first), places(second));
}

/** The same of two lines given by places along them, mm, from one end to the other. */
export function goSameSides(exactSpace: ClearSpace, a: readonly Vec3[], b: readonly Vec3[]): boolean {
  const space = clearSpace(exactSpace, { offsetMm: exactSpace.offsetMm + GIVEN_UP_MM });
  const columns = b.length;
  let reached = new Array<boolean>(columns).fill(false);
  for (let i = 0; i < a.length; i++) {
    const row = new Array<boolean>(columns).fill(false);
    for (let j = 0; j < columns; j++) {
      const open = (i === 0 && j === 0) || reached[j] || (j > 0 && (row[j - 1] || reached[j - 1]));
      row[j] = Boolean(open) && isThreadClear(space, a[i] as Vec3, b[j] as Vec3);
    }
    reached = row;
  }
  return reached[columns - 1] as boolean;
}

function places(path: ArcLinePath): Vec3[] {
  return samplePath(path, pathLengthMm(path) / PLACES).map(({ point }) => point);
}

function isThreadClear(space: ClearSpace, from: Vec3, to: Vec3): boolean {
  const lengthMm = lengthOf(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  if (lengthMm === 0) return true;
  const direction: Vec3 = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm, (to[2] - from[2]) / lengthMm];
  // A thread between two ways is no hose: it may climb.
  const { fall: _, noCrest: __, ...open } = space;
  return isSegmentClear(open, { point: from, direction }, { kind: 'line', lengthMm });
}
