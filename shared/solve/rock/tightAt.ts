import { motionsAt } from '../../document/lay/motionsAt.ts';
import type { RockPose } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import type { HeldHose } from './heldHose.ts';
import { slackLeftIn } from './slackLeft.ts';

/** Shares of the motion looked at on the way to each extreme, up to MOST_SHARE, before the crossing is closed in on. */
const LOOKS = 16;
const MOST_SHARE = 2;
/** Halvings: the share is then known to 1 in 2000000. */
const HALVINGS = 20;

export interface TightAt {
  readonly share: number;
  /** number of the pose */
  readonly extreme: number;
}

/**
 * The least share of the motion at which a hose goes tight, over all extremes: on the straight way from rest to each, all
 * turns and shifts in the same proportion. 0 = tight at rest. undefined: not within twice the motion.
 */
export function tightAt(
  project: Pick<Project, 'bay'>,
  hose: HeldHose,
  poses: readonly RockPose[],
): TightAt | undefined {
  const slackLeft = slackLeftIn(hose);
  let first: TightAt | undefined;
  poses.forEach((pose, extreme) => {
    const left = (share: number): number => slackLeft(motionsAt(project, pose, share));
    const share = firstCrossing(left, first?.share ?? MOST_SHARE);
    if (share !== undefined && (first === undefined || share < first.share)) first = { share, extreme };
  });
  return first;
}

/** The first share, up to `most`, at which the function falls below 0. */
function firstCrossing(left: (share: number) => number, most: number): number | undefined {
  if (left(0) < 0) return 0;
  for (let look = 1; look <= LOOKS; look++) {
    let high = (most * look) / LOOKS;
    if (left(high) >= 0) continue;
    let low = (most * (look - 1)) / LOOKS;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (left(middle) < 0) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
}
