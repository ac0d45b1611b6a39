import type { Watch } from '../../base/watch.ts';
import { bentThread } from './bentThread.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import type { ClearSpace } from './clearSpace.ts';
import { DearPlaces } from './dearPlaces.ts';
import type { EndPose } from './endPoses.ts';
import type { FineGrid } from './fineGrid.ts';
import { pushClear } from './pushClear.ts';

export interface BentWays {
  readonly candidate?: Candidate;
  /** states expanded, a count of the work done */
  readonly expanded: number;
}

/**
 * A way along a line that bends as a hose does and gives up at most `shortMm` of clearance, pushed clear. Where that fails the place
 * is made dear and another line is tried. Of turning ends only the first pose of each is tried.
 */
export function bentWays(
  space: ClearSpace,
  fine: FineGrid,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  limits: { readonly shortMm: number; readonly attempts: number; readonly mostStates: number },
  watch: Watch,
): BentWays {
  const [start] = starts;
  const [goal] = goals;
  const dear = new DearPlaces(radiusMm);
  const price = (x: number, y: number, z: number): number => dear.price(x, y, z);
  let expanded = 0;
  if (start === undefined || goal === undefined) return { expanded };
  for (let attempt = 0; attempt < limits.attempts && expanded < limits.mostStates; attempt++) {
    const most = limits.mostStates - expanded;
    const found = bentThread(space, fine, start.pose, goal.pose, radiusMm, limits.shortMm, price, most, watch);
    expanded += found.expanded;
    if (found.line === undefined) break;
    const pushed = pushClear(space, start.pose, goal.pose, found.line, radiusMm, watch);
    if (pushed.path) return { candidate: candidateOf(pushed.path, start.clockRad, goal.clockRad), expanded };
    dear.add(found.line, pushed.worst);
  }
  return { expanded };
}
