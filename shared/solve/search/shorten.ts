import type { RandomSource } from '../../base/random.ts';
import type { Watch } from '../../base/watch.ts';
import type { Candidate } from './candidate.ts';
import type { ClearSpace } from './clearSpace.ts';
import { drawTight } from './drawTight.ts';
import type { Budget } from './effort.ts';
import { kickedAside } from './kickedAside.ts';
import { withNearShortcuts } from './nearShortcuts.ts';
import type { SearchProblem } from './problem.ts';
import { shortenByShortcuts } from './shortcut.ts';

/** A way that was kicked aside is shortened with this share of the usual tries: most kicks come to nothing. */
const KICK_SHARE = 0.3;
/** A gain under this share of the length does not count as one. */
const LEAST_GAIN = 1e-4;

export type ShortenedEnds = Pick<SearchProblem, 'from' | 'to' | 'minRadiusMm'>;

/** A way made short where it lies: by shortcuts, with the loops between near places the shortest ones, then drawn tight. */
export function shorten(
  space: ClearSpace,
  ends: ShortenedEnds,
  candidate: Candidate,
  budget: Budget,
  random: RandomSource,
  watch: Watch,
  share = 1,
): Candidate {
  const failures = Math.ceil(share * budget.shortcutFailures);
  const short = shortenByShortcuts(space, ends, candidate, random, failures, watch);
  const round = share < 1 ? short : withNearShortcuts(space, short, ends.minRadiusMm);
  return drawTight(space, ends, round, random, Math.ceil(share * budget.cornerRounds), watch);
}

/**
 * Moves a short way out of shapes that cannot be made shorter a little at a time: it is kicked aside, made short again, and
 * kept where it is shorter then (basin hopping, Wales and Doye 1997). Ends after `budget.kicks` kicks in a row without gain.
 */
export function shortenByKicks(
  space: ClearSpace,
  ends: ShortenedEnds,
  candidate: Candidate,
  budget: Budget,
  random: RandomSource,
  watch: Watch,
): Candidate {
  let best = candidate;
  for (let idle = 0; idle < budget.kicks; idle++) {
    const kicked = kickedAside(space, best, ends.minRadiusMm, random);
    if (kicked === undefined) continue;
    const short = shorten(space, ends, kicked, budget, random, watch, KICK_SHARE);
    if (short.lengthMm >= best.lengthMm) continue;
    if (short.lengthMm < best.lengthMm * (1 - LEAST_GAIN)) idle = -1;
    best = short;
  }
  return best === candidate ? best : shorten(space, ends, best, budget, random, watch);
}
