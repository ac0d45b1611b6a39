import type { Lay, Rock, RockExtreme } from './schema.ts';

/** A hose that is worked by the bodies' motion, and what is told of it. */
export interface WorkedLay {
  readonly lay: Lay;
  readonly rock: Rock;
}

/**
 * The hoses that are worked, in the order in which they go tight: by the share of the motion at which they do, then by
 * the slack that is left. Hoses that one body carries never do, and are not among them.
 */
export function tightOrder(lays: readonly Lay[]): WorkedLay[] {
  const worked = lays.flatMap((lay) => (lay.rock === undefined || lay.rock.carried ? [] : [{ lay, rock: lay.rock }]));
  const share = ({ rock }: WorkedLay): number => rock.tightAt?.share ?? Number.MAX_VALUE;
  return worked.sort((a, b) => share(a) - share(b) || leastSlackMm(a.rock) - leastSlackMm(b.rock));
}

/** mm, at the extreme that leaves least; what does not reach in a straight line counts with what is missing. */
export function leastSlackMm({ extremes, worst }: Rock): number {
  const extreme = extremes[worst.slackLeft];
  return extreme === undefined ? 0 : Math.min(extreme.slackLeftMm, -(extreme.missingMm ?? Number.NEGATIVE_INFINITY));
}

/** The extreme that is worst in something; undefined where it was measured at none. */
export function worstExtreme({ extremes, worst }: Rock, what: keyof Rock['worst']): RockExtreme | undefined {
  const at = worst[what];
  return at === undefined ? undefined : extremes[at];
}
