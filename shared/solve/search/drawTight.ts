import type { RandomSource } from '../../base/random.ts';
import { addScaled, dot, sub, unit, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { pathEnd } from '../../geometry/arcLinePath.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';
import { type CornerChain, chainLengthMm, chainOf, chainPath } from './cornerChain.ts';
import { type EndPose, endPoseAt, standsClear } from './endPoses.ts';
import type { SearchProblem } from './problem.ts';

/** Steps of a corner, mm: the first, and the least below which it counts as settled. */
const FIRST_STEP_MM = 8;
const LEAST_STEP_MM = 0.03;
const STEP_GROWTH = 1.6;
const STEP_SHRINK = 0.85;
/** mm; a smaller gain is not worth a move */
const LEAST_GAIN_MM = 1e-4;
/** Shares of the moves. */
const MOVE_SHARES = { radius: 0.12, clock: 0.1, drop: 0.04, pair: 0.2 };

interface Tightening {
  readonly space: ClearSpace;
  readonly problem: Pick<SearchProblem, 'from' | 'to' | 'minRadiusMm'>;
  readonly random: RandomSource;
  chain: CornerChain;
  lengthMm: number;
  steps: number[];
  start: EndPose;
  goal: EndPose;
}

interface Move {
  readonly chain: CornerChain;
  /** the corners that moved */
  readonly first: number;
  readonly last: number;
  readonly start?: EndPose;
  readonly goal?: EndPose;
  readonly dropped?: number;
}

/**
 * Draws a clear way tight: its corners are moved, one or two at a time, towards the chord and at random, their radii
 * and the clocks of turning ends too, and corners are left out, keeping what makes the way shorter, stays clear and
 * leaves every straight room for the rounding at its ends. Step sizes adapt to success (1/5 rule, Rechenberg 1973). Ends stay at their poses,
 * radii at or above the least. Stops after `rounds` moves a corner or when all steps are down to 0.03 mm.
 */
export function drawTight(
  space: ClearSpace,
  problem: Pick<SearchProblem, 'from' | 'to' | 'minRadiusMm'>,
  candidate: Candidate,
  random: RandomSource,
  rounds: number,
  watch: Watch,
): Candidate {
  const chain = chainOf(candidate.path);
  const lengthMm = chainLengthMm(chain);
  if (lengthMm === undefined || chain.points.length < 4) return candidate;
  const start = { clockRad: candidate.fromClockRad, pose: candidate.path.start };
  const goal = { clockRad: candidate.toClockRad, pose: pathEnd(candidate.path) };
  const steps = chain.points.map(() => FIRST_STEP_MM);
  const state: Tightening = { space, problem, random, chain, lengthMm, steps, start, goal };
  for (let tries = rounds * (chain.points.length - 2); tries > 0; tries--) {
    if (tries % 16 === 0) stopIfCancelled(watch);
    if (state.chain.points.length < 4 || isSettled(state)) break;
    const corner = 1 + Math.floor(random() * (state.chain.points.length - 2));
    const move = someMove(state, corner);
    const gained = move !== undefined && tryMove(state, move);
    if (move?.dropped === undefined) {
      const step = state.steps[corner] as number;
      state.steps[corner] = gained ? Math.min(FIRST_STEP_MM * 3, step * STEP_GROWTH) : step * STEP_SHRINK;
    }
  }
  if (state.lengthMm >= candidate.lengthMm) return candidate;
  return candidateOf({ ...chainPath(state.chain), start: state.start.pose }, state.start.clockRad, state.goal.clockRad);
}

/** Whether no corner between the ends has a step left that is worth trying. */
function isSettled({ steps }: Tightening): boolean {
  for (let i = 1; i < steps.length - 1; i++) if ((steps[i] as number) >= LEAST_STEP_MM) return false;
  return true;
}

function tryMove(state: Tightening, move: Move): boolean {
  const lengthMm = chainLengthMm(move.chain);
  if (lengthMm === undefined || !(lengthMm <= state.lengthMm - LEAST_GAIN_MM)) return false;
  if (!keepsEndDirections(move.chain, move.start ?? state.start, move.goal ?? state.goal)) return false;
  if (!isPathClear(state.space, chainPath(move.chain, move.first - 1, move.last + 1))) return false;
  state.chain = move.chain;
  state.lengthMm = lengthMm;
  state.start = move.start ?? state.start;
  state.goal = move.goal ?? state.goal;
  if (move.dropped !== undefined) state.steps.splice(move.dropped, 1);
  return true;
}

/** The first and last corners lie ahead of the start and behind the goal (they are moved along those lines only). */
function keepsEndDirections({ points }: CornerChain, start: EndPose, goal: EndPose): boolean {
  const ahead = dot(sub(points[1] as Vec3, points[0] as Vec3), start.pose.direction);
  const behind = dot(sub(points.at(-1) as Vec3, points.at(-2) as Vec3), goal.pose.direction);
  return ahead > 0 && behind > 0;
}

function someMove(state: Tightening, corner: number): Move | undefined {
  const draw = state.random();
  if (draw < MOVE_SHARES.radius) return radiusMove(state, corner);
  if (draw < MOVE_SHARES.radius + MOVE_SHARES.clock) return clockMove(state);
  if (draw < MOVE_SHARES.radius + MOVE_SHARES.clock + MOVE_SHARES.drop) return dropMove(state, corner);
  const along = moveDirection(state, corner);
  const step = (state.steps[corner] as number) * (0.3 + state.random());
  const pair = state.random() < MOVE_SHARES.pair && corner + 1 < state.chain.points.length - 1;
  const points = [...state.chain.points];
  points[corner] = moved(state, corner, along, step);
  if (pair)
    points[corner + 1] = moved(
      state,
      corner + 1,
      state.random() < 0.5 ? along : moveDirection(state, corner + 1),
      step,
    );
  return { chain: { ...state.chain, points }, first: corner, last: pair ? corner + 1 : corner };
}

/** A corner beside an end moves along the end's line; where it is beside both, nothing can move it. */
function moved({ chain, start, goal }: Tightening, corner: number, along: Vec3, stepMm: number): Vec3 {
  const point = chain.points[corner] as Vec3;
  const line =
    corner === 1 ? start.pose.direction : corner === chain.points.length - 2 ? goal.pose.direction : undefined;
  return line ? addScaled(point, line, stepMm * (dot(along, line) < 0 ? -1 : 1)) : addScaled(point, along, stepMm);
}

/** Half towards the chord of the neighbours, where the chain gets shorter, half at random. */
function moveDirection({ chain, random }: Tightening, corner: number): Vec3 {
  const z = 2 * random() - 1;
  const turn = 2 * Math.PI * random();
  const flat = Math.sqrt(1 - z * z);
  const anyWay: Vec3 = [flat * Math.cos(turn), flat * Math.sin(turn), z];
  const point = chain.points[corner] as Vec3;
  const back = unit(sub(chain.points[corner - 1] as Vec3, point));
  const on = unit(sub(chain.points[corner + 1] as Vec3, point));
  const pull = random();
  return unit([
    pull * (back[0] + on[0]) + (1 - pull) * anyWay[0],
    pull * (back[1] + on[1]) + (1 - pull) * anyWay[1],
    pull * (back[2] + on[2]) + (1 - pull) * anyWay[2],
  ]);
}

function radiusMove({ chain, problem, random }: Tightening, corner: number): Move {
  const radii = [...chain.radii];
  const least = problem.minRadiusMm;
  const changed = random() < 0.3 ? least : (radii[corner] as number) * 2 ** ((random() - 0.5) / 2);
  radii[corner] = Math.max(least, changed);
  return { chain: { ...chain, radii }, first: corner, last: corner };
}

function dropMove({ chain }: Tightening, corner: number): Move | undefined {
  const last = chain.points.length - 2;
  if (last < 3 || corner === 1 || corner === last) return undefined;
  const points = [...chain.points];
  const radii = [...chain.radii];
  points.splice(corner, 1);
  radii.splice(corner, 1);
  return { chain: { points, radii }, first: corner - 1, last: corner, dropped: corner };
}

/** Another clock of a turning end, its first corner as far from the mouth as before. */
function clockMove({ chain, problem, random, start, goal }: Tightening): Move | undefined {
  const change = (random() * 2 - 1) * random() ** 3;
  const points = [...chain.points];
  if (random() < 0.5) {
    if (problem.from.kind === 'held') return undefined;
    const turned = endPoseAt(problem.from, start.clockRad + change);
    if (!standsClear(problem.from, turned.clockRad)) return undefined;
    const ahead = dot(sub(points[1] as Vec3, points[0] as Vec3), start.pose.direction);
    points[0] = turned.pose.point;
    points[1] = addScaled(turned.pose.point, turned.pose.direction, ahead);
    return { chain: { ...chain, points }, first: 1, last: 1, start: turned };
  }
  if (problem.to.kind === 'held') return undefined;
  const n = points.length - 2;
  const turned = endPoseAt(problem.to, goal.clockRad + change);
  if (!standsClear(problem.to, turned.clockRad)) return undefined;
  const behind = dot(sub(points[n + 1] as Vec3, points[n] as Vec3), goal.pose.direction);
  points[n + 1] = turned.pose.point;
  points[n] = addScaled(turned.pose.point, turned.pose.direction, -behind);
  return { chain: { ...chain, points }, first: n, last: n, goal: turned };
}
