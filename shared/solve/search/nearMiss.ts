import { seededRandom } from '../../base/random.ts';
import { partOf, type Watch } from '../../base/watch.ts';
import { clearSpace } from './clearSpace.ts';
import { shortestDirectConnection } from './directConnections.ts';
import { BUDGETS } from './effort.ts';
import { clearEndPoses, endPoses, pointOf } from './endPoses.ts';
import { firstWays, guideGridFor } from './firstWays.ts';
import type { SearchProblem, SearchResult } from './problem.ts';
import { provenApart } from './provenApart.ts';
import { provenMargin } from './provenMargin.ts';
import { shortenByShortcuts } from './shortcut.ts';

/** mm by which the clearance wanted is given up, one after the other, until a way is found. */
const OFFSETS_MM = [1, 3, 6, 10, 16, 25, 40, 60, 100, 200] as const;

/** States expanded for each offset. */
const MOST_STATES = 6_000;

/**
 * The way that breaks the clearance least, to name what is in the way: the search again with every margin raised by a
 * growing offset, until one is found. The offsets are steps, so "least" is meant to within one step.
 */
export function nearMiss(problem: SearchProblem, watch: Watch): Pick<SearchResult, 'bestNearMiss' | 'expanded'> {
  const budget = BUDGETS.quick;
  const exact = clearSpace({ field: problem.field });
  let expanded = 0;
  for (const [i, offsetMm] of OFFSETS_MM.entries()) {
    const part = partOf(watch, i / OFFSETS_MM.length, (i + 1) / OFFSETS_MM.length);
    part.report({ fraction: 0, doing: 'Looking for what is in the way' });
    const space = clearSpace({ field: problem.field, offsetMm });
    const random = seededRandom(problem.seed + i);
    const starts = clearEndPoses(space, problem.from, endPoses(problem.from, budget.clocks));
    const goals = clearEndPoses(space, problem.to, endPoses(problem.to, budget.clocks));
    if (starts.length === 0 || goals.length === 0) continue;
    const radiusMm = problem.minRadiusMm;
    let candidate = shortestDirectConnection(space, starts, goals, radiusMm)?.candidate;
    if (!candidate) {
      if (provenApart(space, starts.map(pointOf), goals.map(pointOf), part)) continue;
      const limits = { mostStates: MOST_STATES, wanted: 1 };
      const guideGrid = guideGridFor(space, radiusMm);
      const found = firstWays(space, starts, goals, radiusMm, guideGrid, limits, random, part);
      expanded += found.expanded;
      candidate = found.candidates[0];
    }
    if (!candidate) continue;
    const short = shortenByShortcuts(space, problem, candidate, random, budget.shortcutFailures, part);
    const { metMm, at } = provenMargin(exact, short.path);
    return { bestNearMiss: { path: short.path, worst: { point: at, marginMm: metMm } }, expanded };
  }
  return { expanded };
}
