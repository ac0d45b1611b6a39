import { dot, scale, sub, type Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import type { ClearSpace, Plug } from './clearSpace.ts';
import type { EndPose } from './endPoses.ts';
import type { FineGrid } from './fineGrid.ts';
import { gridThread, type Thread } from './gridThread.ts';
import { pushClear } from './pushClear.ts';

export interface ThreadWays {
  readonly candidate?: Candidate;
  /** cells opened, a count of the work done */
  readonly cells: number;
}

/** Where a pushed line fails, a plug of so many radii closes the place for the next line. */
const PLUG_RADII = 0.35;
/** Cells left open round what no bend reaches beside a mouth: the throat between is else narrower than a cell. */
const THROAT_CELLS = 1.2;

/**
 * A way through places too narrow for any lattice: a line through a fine grid, pushed clear. Where that fails, the place where it
 * failed is plugged and another line is tried, up to `attempts` times and `mostCells` cells in all.
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
  const plugs: Plug[] = [...space.plugs];
  let cells = 0;
  const thread = (from: readonly EndPose[], to: readonly EndPose[], avoid: Avoid): Thread => {
    const points = (ends: readonly EndPose[]): Vec3[] => ends.map(({ pose }) => pose.point);
    const most = limits.mostCells - cells;
    const found = gridThread({ ...space, plugs }, fine, points(from), points(to), most, avoid, watch);
    cells += found.cells;
    return found;
  };
  for (let attempt = 0; attempt < limits.attempts && cells < limits.mostCells; attempt++) {
    const any = starts.length === 1 && goals.length === 1 ? undefined : thread(starts, goals, () => false);
    if (any !== undefined && !any.line) break;
    const start = starts[any?.start ?? 0] as EndPose;
    const goal = goals[any?.goal ?? 0] as EndPose;
    const led = thread([start], [goal], outOfReach(start.pose, goal.pose, radiusMm, THROAT_CELLS * fine.grid.cellMm));
    const line = led.line ?? any?.line ?? thread([start], [goal], () => false).line;
    if (line === undefined) break;
    const pushed = pushClear(space, start.pose, goal.pose, line, radiusMm, watch);
    if (pushed.path) return { candidate: candidateOf(pushed.path, start.clockRad, goal.clockRad), cells };
    plugs.push({ centre: pushed.worst, radiusMm: PLUG_RADII * radiusMm });
  }
  return { cells };
}

type Avoid = (x: number, y: number, z: number) => boolean;

/**
 * Places that a hose does not come to soon after its start or soon before its goal: inside the circles of its least radius
 * that touch its axis there, and right behind. A line led round them leaves and arrives as a hose does.
 */
function outOfReach(start: Pose, goal: Pose, radiusMm: number, throatMm: number): Avoid {
  const round = { point: goal.point, direction: scale(goal.direction, -1) };
  return (x, y, z) =>
    isOutOfReach(start, radiusMm, throatMm, [x, y, z]) || isOutOfReach(round, radiusMm, throatMm, [x, y, z]);
}

function isOutOfReach({ point, direction }: Pose, radiusMm: number, throatMm: number, place: Vec3): boolean {
  const away = sub(place, point);
  const ahead = dot(away, direction);
  const aside = Math.sqrt(Math.max(0, dot(away, away) - ahead * ahead));
  if (Math.hypot(ahead, aside - radiusMm) < radiusMm - throatMm) return true;
  return ahead < 0 && ahead > -2 * radiusMm && aside < radiusMm;
}
