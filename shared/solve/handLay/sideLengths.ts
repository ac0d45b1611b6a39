import { angleBetween, distance } from '../../base/vec3.ts';
import { connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';

/** A stretch of the run between two places where something holds it: as it was taken, and now. */
export interface Side {
  readonly takenMm: number;
  readonly taken: { readonly from: Pose; readonly to: Pose };
  readonly now: { readonly from: Pose; readonly to: Pose };
  /** whether the direction at its ends is held; at a hand it is not, and its turning costs no length */
  readonly turnsA: boolean;
  readonly turnsB: boolean;
  /** true = the hand has hold of an end of it: of a hose already cut, it has hold of the same place all the time */
  readonly holdsCut: boolean;
  /** false = a locked stretch, which keeps its length */
  readonly changes: boolean;
}

/**
 * How long each stretch of the run is now, mm. A hose not yet cut follows: a stretch gets longer by what the shortest
 * arc-straight-arc line between its two ends has gained at the hose's least radius, and by the slack that goes with it. Of a
 * hose already cut, the stretches that changed share what there is, so that the whole keeps its length. Nothing moved
 * gives the lengths that were taken.
 * This only steers the drag: when the run is laid again its length is slack over the taut lay, as ever.
 */
export function sideLengths(sides: readonly Side[], minRadiusMm: number, slack: number, alreadyCut: boolean): number[] {
  const follows = (side: Side): boolean => side.changes && !(alreadyCut && side.holdsCut);
  const gains = sides.map((side) => (follows(side) ? (1 + slack) * gainMm(side, minRadiusMm) : 0));
  const changing = sides.map((side, i) => (follows(side) && gains[i] !== 0 ? side.takenMm : 0));
  const gained = gains.reduce((a, b) => a + b, 0);
  const among = changing.reduce((a, b) => a + b, 0);
  return sides.map((side, i) => {
    const share = alreadyCut && among > 0 ? (gained * (changing[i] as number)) / among : 0;
    const wanted = side.takenMm + (gains[i] as number) - share;
    return follows(side) ? Math.max(wanted, leastMm(side)) : side.takenMm;
  });
}

/** A stretch is not made shorter than this times the distance of its ends, where it was not so short already. */
const REACH = 1.0005;

/**
 * The shortest that a stretch is made, mm: it would not reach. One that lay nearly straight between two clamps may stay so: a
 * hose of 400 mm with 0.2 mm more of it bows out by 3 mm.
 */
function leastMm({ takenMm, taken, now }: Side): number {
  const wasMm = distance(taken.from.point, taken.to.point);
  const reach = wasMm > 0 ? Math.min(REACH, Math.max(1, takenMm / wasMm)) : REACH;
  return reach * distance(now.from.point, now.to.point);
}

/**
 * By how much the shortest line between the ends of a side has grown, mm. Held to what the ends moved and turned: close
 * ends can jump from one shortest line to another of quite another length, which no hose does.
 */
function gainMm({ taken, now, turnsA, turnsB }: Side, radiusMm: number): number {
  const moved = distance(taken.from.point, now.from.point) + distance(taken.to.point, now.to.point);
  const turned =
    (turnsA ? angleBetween(taken.from.direction, now.from.direction) : 0) +
    (turnsB ? angleBetween(taken.to.direction, now.to.direction) : 0);
  const most = moved + radiusMm * turned;
  const before = connectWithShortTurns(taken.from, taken.to, radiusMm);
  const after = connectWithShortTurns(now.from, now.to, radiusMm);
  const gain =
    before === undefined || after === undefined
      ? distance(now.from.point, now.to.point) - distance(taken.from.point, taken.to.point)
      : after.lengthMm - before.lengthMm;
  return Math.max(-most, Math.min(most, gain));
}
