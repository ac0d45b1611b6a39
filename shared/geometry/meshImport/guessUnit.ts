import { type LengthUnit, MM_PER } from '../../base/units.ts';
import { type Box, isEmptyBox } from '../box.ts';

/** mm. A bay, or the piece of one that is scanned, is 0.2 to 5 m along its longest side: common practice, no source. */
const BAY_LEAST_MM = 200;
const BAY_MOST_MM = 5000;
/** What files are written in, most often first: millimetres by CAD and scanners, metres by glTF, the rest seldom. */
const BY_FREQUENCY: readonly LengthUnit[] = ['mm', 'm', 'in', 'cm'];

/**
 * The unit a file's numbers are probably in, from the box round them: the commonest one in which the longest side is as
 * long as a bay's (0.2 to 5 m); where there is none, the one that comes nearest to that by ratio. A guess to ask the
 * user about, never to work from: 250 may be millimetres or inches.
 */
export function guessUnit(box: Box): LengthUnit {
  if (isEmptyBox(box)) return 'mm';
  const side = Math.max(...[0, 1, 2].map((axis) => box.max[axis]! - box.min[axis]!));
  const missedBy = (unit: LengthUnit): number => {
    const sideMm = side * MM_PER[unit];
    return Math.max(1, BAY_LEAST_MM / sideMm, sideMm / BAY_MOST_MM);
  };
  return BY_FREQUENCY.reduce((best, unit) => (missedBy(unit) < missedBy(best) ? unit : best));
}
