import type { Watch } from '../../base/watch.ts';
import { bentThread, type ThreadLimits } from './bentThread.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import type { ClearSpace } from './clearSpace.ts';
import { DearPlaces } from './dearPlaces.ts';
import type { EndPose } from './endPoses.ts';
import { type NarrowGuides, narrowGuides } from './narrowGuide.ts';
import { pushClear } from './pushClear.ts';

export interface BentWays {
  readonly candidate?: Candidate;
  /** states expanded, a count of the work done */
  readonly expanded: number;
}

/** What the lines may cost, all together. */
export interface BentLimits extends ThreadLimits {
  readonly attempts: number;
}

/** Where a line failed, later ones are so many times dearer: else they come by there again, only a little aside. */
const TIMES_DEARER = 10;

/**
 * A way along a line that bends as a hose does and gives way where it is narrow, pushed clear. Where that fails the place
 * is made dear and another line is tried.
 */
export function bentWays(
  space: ClearSpace,
  guides: NarrowGuides,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  limits: BentLimits,
  watch: Watch,
): BentWays {
  const [from, to] = [starts.map(({ pose }) => pose), goals.map(({ pose }) => pose)];
  const both = narrowGuides(space, guides, from, to);
  const dear = new DearPlaces(radiusMm, TIMES_DEARER);
  let expanded = 0;
  for (let attempt = 0; attempt < limits.attempts && expanded < limits.mostStates; attempt++) {
    const left = { ...limits, mostStates: limits.mostStates - expanded };
    const found = bentThread(space, both, from, to, radiusMm, (place) => dear.price(...place), left, watch);
    expanded += found.expanded;
    if (found.line === undefined) break;
    const start = starts[found.start] as EndPose;
    const goal = goals[found.goal] as EndPose;
    const pushed = pushClear(space, start.pose, goal.pose, found.line, radiusMm, watch);
    if (pushed.path) return { candidate: candidateOf(pushed.path, start.clockRad, goal.clockRad), expanded };
    dear.add(found.line, pushed.worst);
  }
  return { expanded };
}
