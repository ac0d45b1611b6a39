import { addScaled, rejectFrom, scale, unit, type Vec3 } from '../../base/vec3.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedEnd } from '../../document/project/resolve.ts';
import { flareNutHexMm, NUT_LENGTH, type Wrench, wrenchFor } from './wrench.ts';

/** A nut as a wrench meets it: where its middle is, and from what clocks about its axis are counted. mm, bay frame. */
export interface Nut {
  readonly wrench: Wrench;
  readonly hexAssumed: boolean;
  readonly middle: Vec3;
  /** where it ends towards the part */
  readonly front: Vec3;
  /** unit, out of the part */
  readonly axis: Vec3;
  /** unit, the port's 12 o'clock */
  readonly up: Vec3;
}

/**
 * The nut of an end as it lies, or undefined for one without (`form` other than nut). It begins `nutReachMm` past its seat
 * towards the part (0 where that is not stated), is 0.75 hex long, and its wrench is at its middle.
 */
export function nutOf({ end, port }: ResolvedEnd, pose: Lay['ends']['a']): Nut | undefined {
  if ((end.form ?? 'nut') !== 'nut') return undefined;
  const wrench = wrenchFor(end.hexMm ?? flareNutHexMm(end.dash));
  const axis = unit(scale(pose.outletAxis, -1));
  const front = addScaled(pose.seatPoint, axis, -(end.nutReachMm ?? 0));
  return {
    wrench,
    hexAssumed: end.hexMm === undefined,
    middle: addScaled(front, axis, (NUT_LENGTH * wrench.hexMm) / 2),
    front,
    axis,
    up: unit(rejectFrom(port.up, axis)),
  };
}
