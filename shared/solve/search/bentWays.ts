import type { Watch } from '../../base/watch.ts';
import { bentThread, type ThreadGuides, type ThreadLimits } from './bentThread.ts';
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

/** How a line is looked for; mostStates: what it may cost. */
export interface BentLook extends ThreadLimits {
  readonly guides: NarrowGuides;
}

/** What the lines may cost, all together. */
export interface BentLimits {
  readonly attempts: number;
  readonly mostStates: number;
}

/** Where a line failed, later ones are so many times dearer: else they come by there again, only a little aside. */
const TIMES_DEARER = 10;

/**
 * A way along a line that bends as a hose does and gives way where it is narrow, pushed clear. Where that fails the place
 * is made dear, where it explores also what holds the hose there, and another line is tried. The looks take turns, until
 * none of them finds a line any more.
 */
export function bentWays(
  space: ClearSpace,
  looks: readonly BentLook[],
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  limits: BentLimits,
  watch: Watch,
): BentWays {
  const [from, to] = [starts.map(({ pose }) => pose), goals.map(({ pose }) => pose)];
  const kinds = [...new Set(looks.map(({ guides }) => guides))];
  const guidesOf = new Map(kinds.map((kind) => [kind, narrowGuides(space, kind, from, to)]));
  const dear = new DearPlaces(radiusMm, TIMES_DEARER);
  let expanded = 0;
  let inVain = 0;
  for (let attempt = 0; attempt < limits.attempts && expanded < limits.mostStates && inVain < looks.length; attempt++) {
    const look = looks[attempt % looks.length] as BentLook;
    const guides = guidesOf.get(look.guides) as ThreadGuides;
    const left = { ...look, mostStates: Math.min(look.mostStates, limits.mostStates - expanded) };
    const found = bentThread(space, guides, from, to, radiusMm, (place) => dear.price(...place), left, watch);
    expanded += found.expanded;
    inVain = found.line === undefined ? inVain + 1 : 0;
    if (found.line === undefined) continue;
    const start = starts[found.start] as EndPose;
    const goal = goals[found.goal] as EndPose;
    const pushed = pushClear(space, start.pose, goal.pose, found.line, radiusMm, watch);
    if (pushed.path) return { candidate: candidateOf(pushed.path, start.clockRad, goal.clockRad), expanded };
    for (const place of look.explores ? [...pushed.heldAt, pushed.worst] : [pushed.worst]) dear.add(found.line, place);
  }
  return { expanded };
}
