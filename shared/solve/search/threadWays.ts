import type { Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import type { ClearSpace } from './clearSpace.ts';
import { DearPlaces } from './dearPlaces.ts';
import type { EndPose } from './endPoses.ts';
import type { FineGrid } from './fineGrid.ts';
import { gridThread, type Thread } from './gridThread.ts';
import { pushClear } from './pushClear.ts';

export interface ThreadWays {
  readonly candidate?: Candidate;
  /** cells opened, a count of the work done */
  readonly cells: number;
}

/** Share of the cells left that the first line may open. */
const FIRST_SHARE = 0.3;
/** Cells left open round what no bend reaches beside a mouth: the throat between is else narrower than a cell. */
const THROAT_CELLS = 1.2;

/**
 * A way through places too narrow for any lattice: a line through a fine grid, pushed clear. Where that fails, the place where it
 * failed is made dear and another line is tried, up to `attempts` times and `mostCells` cells in all.
 */
export function threadWays(
  space: ClearSpace,
  fine: FineGrid,
  starts: readonly EndPose[],
  goals: readonly EndPose[],
  radiusMm: number,
  limits: { readonly attempts: number; readonly mostCells: number },
  watch: Watch,
): ThreadWays {
  const dear = new DearPlaces(radiusMm);
  let cells = 0;
  const thread = (from: readonly EndPose[], to: readonly EndPose[], avoid: Avoid, share = 1): Thread => {
    const points = (ends: readonly EndPose[]): Vec3[] => ends.map(({ pose }) => pose.point);
    const most = share * (limits.mostCells - cells);
    const price = (x: number, y: number, z: number): number =>
      avoid(x, y, z) ? Number.POSITIVE_INFINITY : dear.price(x, y, z);
    const found = gridThread(space, fine, points(from), points(to), most, price, watch);
    cells += found.cells;
    return found;
  };
  for (let attempt = 0; attempt < limits.attempts && cells < limits.mostCells; attempt++) {
    const any = starts.length === 1 && goals.length === 1 ? undefined : thread(starts, goals, () => false);
    if (any !== undefined && !any.line) break;
    const start = starts[any?.start ?? 0] as EndPose;
    const goal = goals[any?.goal ?? 0] as EndPose;
    const cellMm = fine.grid.cellMm;
    const line =
      thread([start], [goal], outOfReach(start.pose, goal.pose, radiusMm, cellMm), FIRST_SHARE).line ??
      thread([start], [goal], rightBehind(start.pose, goal.pose, radiusMm, cellMm)).line;
    if (line === undefined) break;
    const pushed = pushClear(space, start.pose, goal.pose, line, radiusMm, watch);
    if (pushed.path) return { candidate: candidateOf(pushed.path, start.clockRad, goal.clockRad), cells };
    dear.add(line, pushed.worst);
  }
  return { cells };
}

type Avoid = (x: number, y: number, z: number) => boolean;

/** A place as a mouth sees it: mm ahead of it along its axis, and mm beside the axis. */
function seenFrom({ point, direction }: Pose, sign: 1 | -1, x: number, y: number, z: number): [number, number] {
  const [dx, dy, dz] = [x - point[0], y - point[1], z - point[2]];
  const ahead = dx * direction[0] + dy * direction[1] + dz * direction[2];
  return [sign * ahead, Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - ahead * ahead))];
}

/**
 * Places that a hose does not come to soon after its start or soon before its goal: inside the circles of its least radius
 * that touch its axis there, and behind. A line led round them leaves and arrives as a hose does.
 */
function outOfReach(start: Pose, goal: Pose, radiusMm: number, cellMm: number): Avoid {
  const round = radiusMm - THROAT_CELLS * cellMm;
  const out = ([ahead, aside]: [number, number]): boolean =>
    ahead * ahead + (aside - radiusMm) ** 2 < round * round ||
    (ahead < -cellMm && ahead > -2 * radiusMm && aside < radiusMm);
  return (x, y, z) => out(seenFrom(start, 1, x, y, z)) || out(seenFrom(goal, -1, x, y, z));
}

/** A disc right behind each mouth: less than is out of reach, for hoses that come past their own ends again. */
function rightBehind(start: Pose, goal: Pose, radiusMm: number, cellMm: number): Avoid {
  const out = ([ahead, aside]: [number, number]): boolean =>
    ahead < -cellMm && ahead > -3.4 * cellMm && aside < radiusMm - cellMm;
  return (x, y, z) => out(seenFrom(start, 1, x, y, z)) || out(seenFrom(goal, -1, x, y, z));
}
