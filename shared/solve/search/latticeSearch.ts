import { anySquareTo, cross, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import {
  type Connection,
  connectionPath,
  connectPoses,
  connectWithShortTurns,
} from '../../geometry/arcLineConnector.ts';
import {
  type ArcLinePath,
  joinPaths,
  type PathSegment,
  type Pose,
  poseAlongSegment,
  segmentLengthMm,
} from '../../geometry/arcLinePath.ts';
import { type ClearSpace, isPathClear, isSegmentClear } from './clearSpace.ts';
import { cellAt, type GoalDistance, type Grid } from './goalDistance.ts';
import { HEADING_BINS, headingBin } from './headingBin.ts';
import { NodeQueue } from './nodeQueue.ts';

export interface LatticeSetting {
  readonly radiusMm: number;
  /** length of one step, mm */
  readonly stepMm: number;
  /** one state is kept for each cell of this grid and each bin of headings */
  readonly grid: Grid;
  readonly guide: GoalDistance;
  /** how much the estimate of what is left counts against what is done; above 1 is quicker and less short */
  readonly greed: number;
  readonly mostStates: number;
}

export interface LatticeResult {
  readonly path?: ArcLinePath;
  /** which start and goal the path joins */
  readonly start: number;
  readonly goal: number;
  readonly expanded: number;
  /** all states that can be reached were expanded, none left */
  readonly emptied: boolean;
}

/** Directions of turning tried at each state. */
const TURNS = 8;
/** Radii tried, as multiples of the least. */
const RADIUS_FACTORS = [1, 2.5];
/** After the first way to a goal, this share of further states is spent to look for a shorter one. */
const LOOK_ON_SHARE = 0.25;
const LOOK_ON_LEAST = 100;
/** Goals tried from one state, the nearest by connection length. */
const SHOTS = 2;
/** Of many goals (clocks of a turning end) about so many are asked for the estimate. */
const GOALS_ESTIMATED = 4;
const STATES_BETWEEN_CANCEL_CHECKS = 256;

/** The growing record of states; parallel arrays, one entry a state. */
interface States {
  readonly poses: Pose[];
  readonly costs: number[];
  /** what is left to a goal, as far as is known, mm */
  readonly left: number[];
  readonly parents: number[];
  readonly steps: (PathSegment | undefined)[];
  /** which start the states that have no parent stand at, in the order of those states */
  readonly roots: number[];
}

interface Shot {
  readonly goal: number;
  readonly connection: Connection;
}

/**
 * Looks for a way of bounded curvature from any of the starts to any of the goals. Method: weighted A* over poses, one state for each
 * cell and heading bin (the pose itself is exact, never snapped); steps are a straight and arcs of the least and a
 * wider radius to eight sides; the estimate is the larger of the grid distance and the shortest obstacle-free
 * arc-straight-arc connection; every few states, and at every state near the goal, that connection is tried. Every
 * step is proven clear. The answer is a first way, to be shortened; it is neither the shortest nor, since states are
 * pruned by cell, sure to be found.
 */
export function latticeSearch(
  space: ClearSpace,
  starts: readonly Pose[],
  goals: readonly Pose[],
  setting: LatticeSetting,
  watch: Watch,
): LatticeResult {
  const states: States = { poses: [], costs: [], left: [], parents: [], steps: [], roots: [] };
  const best = new Map<number, number>();
  const queue = new NodeQueue();
  let found: { node: number; shot: Shot; total: number } | undefined;
  let mostStates = setting.mostStates;
  starts.forEach((start, i) => {
    if (addState(states, best, queue, setting, goals, start, 0, -1, undefined)) states.roots.push(i);
  });
  let expanded = 0;
  for (let node = queue.pop(); node >= 0; node = queue.pop()) {
    if (expanded % STATES_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
    if (expanded >= mostStates) return finish(states, found, goals, expanded, false);
    const pose = states.poses[node] as Pose;
    const cost = states.costs[node] as number;
    if (best.get(stateKey(setting, pose)) !== node) continue;
    if (found && cost >= found.total) continue;
    expanded++;
    if (isTimeToShoot(setting, pose, expanded)) {
      const shot = clearShot(space, pose, goals, setting.radiusMm, (found?.total ?? Number.POSITIVE_INFINITY) - cost);
      if (shot) {
        if (!found) mostStates = Math.min(mostStates, Math.ceil(expanded * (1 + LOOK_ON_SHARE)) + LOOK_ON_LEAST);
        found = { node, shot, total: cost + shot.connection.lengthMm };
      }
    }
    for (const step of stepsFrom(pose, setting)) {
      if (!isSegmentClear(space, pose, step)) continue;
      const lengthMm = segmentLengthMm(step);
      addState(
        states,
        best,
        queue,
        setting,
        goals,
        poseAlongSegment(pose, step, lengthMm),
        cost + lengthMm,
        node,
        step,
      );
    }
  }
  return finish(states, found, goals, expanded, true);
}

function addState(
  states: States,
  best: Map<number, number>,
  queue: NodeQueue,
  setting: LatticeSetting,
  goals: readonly Pose[],
  pose: Pose,
  cost: number,
  parent: number,
  step: PathSegment | undefined,
): boolean {
  const key = stateKey(setting, pose);
  const rival = best.get(key);
  if (rival !== undefined && (states.costs[rival] as number) <= cost) return false;
  const [x, y, z] = pose.point;
  const guide = setting.guide.at(x, y, z);
  if (guide === Number.POSITIVE_INFINITY) return false;
  const before = parent < 0 ? 0 : (states.left[parent] as number) - (cost - (states.costs[parent] as number));
  const left = Math.max(guide, freeLength(pose, goals, setting.radiusMm, parent < 0) ?? before);
  const node = states.poses.length;
  states.poses.push(pose);
  states.costs.push(cost);
  states.left.push(left);
  states.parents.push(parent);
  states.steps.push(step);
  best.set(key, node);
  queue.push(cost + setting.greed * left, node);
  return true;
}

function stateKey(setting: LatticeSetting, pose: Pose): number {
  const [x, y, z] = pose.point;
  return cellAt(setting.grid, x, y, z) * HEADING_BINS + headingBin(pose.direction);
}

/**
 * Shortest connection to any goal as if nothing stood in the way; undefined where none is found with turns under pi.
 * `thorough` also looks for those with longer turns.
 */
function freeLength(pose: Pose, goals: readonly Pose[], radiusMm: number, thorough: boolean): number | undefined {
  let least: number | undefined;
  const stride = Math.max(1, Math.floor(goals.length / GOALS_ESTIMATED));
  for (let i = 0; i < goals.length; i += stride) {
    const connection = connectWithShortTurns(pose, goals[i] as Pose, radiusMm);
    if (connection && connection.lengthMm < (least ?? Number.POSITIVE_INFINITY)) least = connection.lengthMm;
  }
  if (least !== undefined || !thorough) return least;
  return connectPoses(pose, goals[0] as Pose, radiusMm)?.lengthMm;
}

function stepsFrom(pose: Pose, setting: LatticeSetting): PathSegment[] {
  const steps: PathSegment[] = [{ kind: 'line', lengthMm: setting.stepMm }];
  const first = anySquareTo(pose.direction);
  const second = cross(pose.direction, first);
  for (let i = 0; i < TURNS; i++) {
    const c = Math.cos((2 * Math.PI * i) / TURNS);
    const s = Math.sin((2 * Math.PI * i) / TURNS);
    const normal: Vec3 = [c * first[0] + s * second[0], c * first[1] + s * second[1], c * first[2] + s * second[2]];
    for (const factor of RADIUS_FACTORS) {
      const radiusMm = setting.radiusMm * factor;
      steps.push({ kind: 'arc', radiusMm, angleRad: setting.stepMm / radiusMm, normal });
    }
  }
  return steps;
}

/** Every state near the goal, fewer the further off: connections over long distances are mostly blocked. */
function isTimeToShoot(setting: LatticeSetting, pose: Pose, expanded: number): boolean {
  const [x, y, z] = pose.point;
  const guide = setting.guide.at(x, y, z);
  return expanded % (1 + Math.floor(guide / (2 * setting.radiusMm))) === 0;
}

function clearShot(
  space: ClearSpace,
  pose: Pose,
  goals: readonly Pose[],
  radiusMm: number,
  shorterThanMm: number,
): Shot | undefined {
  const shots: Shot[] = [];
  goals.forEach((to, goal) => {
    const connection = connectWithShortTurns(pose, to, radiusMm);
    if (connection && connection.lengthMm < shorterThanMm) shots.push({ goal, connection });
  });
  shots.sort((a, b) => a.connection.lengthMm - b.connection.lengthMm || a.goal - b.goal);
  return shots
    .slice(0, SHOTS)
    .find(({ goal, connection }) => isPathClear(space, connectionPath(pose, goals[goal] as Pose, connection)));
}

function finish(
  states: States,
  found: { node: number; shot: Shot } | undefined,
  goals: readonly Pose[],
  expanded: number,
  emptied: boolean,
): LatticeResult {
  if (!found) return { start: -1, goal: -1, expanded, emptied };
  const segments: PathSegment[] = [];
  let node = found.node;
  for (let parent = states.parents[node] as number; parent >= 0; parent = states.parents[node] as number) {
    segments.push(states.steps[node] as PathSegment);
    node = parent;
  }
  const start = states.poses[node] as Pose;
  const { goal, connection } = found.shot;
  const last = connectionPath(states.poses[found.node] as Pose, goals[goal] as Pose, connection);
  const path = joinPaths({ start, segments: segments.reverse() }, last);
  return { path, start: states.roots[node] as number, goal, expanded, emptied };
}
