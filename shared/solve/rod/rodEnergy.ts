import { lengthOf } from '../../base/vec3.ts';
import { contactEnergy } from './rodContact.ts';
import type { RodLoads } from './rodLoads.ts';
import type { RodProblem } from './rodProblem.ts';
import { pullEnergy } from './rodPull.ts';
import { poseAt, type RodScale, type RodState, type RodWorkspace } from './rodState.ts';
import { twistEnergy } from './rodTwist.ts';

/**
 * Bending energy between unit tangents u and v across a cell of length h, without the factor 2/h: tan^2(angle / 2),
 * from the difference and the sum so that small angles keep all their digits.
 */
function halfAngleTangentSquared(ux: number, uy: number, uz: number, vx: number, vy: number, vz: number): number {
  const dx = ux - vx;
  const dy = uy - vy;
  const dz = uz - vz;
  const sx = ux + vx;
  const sy = uy + vy;
  const sz = uz + vz;
  return (dx * dx + dy * dy + dz * dz) / (sx * sx + sy * sy + sz * sz);
}

/** Bending energy of the whole rod, half cells at the ends included: 2 tan^2(angle/2) / (cell length). */
export function bendingEnergy(state: RodState, edges: number): number {
  const { tangents: t, poseA: a, poseB: b } = state;
  const last = 3 * edges - 3;
  let sum =
    2 * halfAngleTangentSquared(a[9]!, a[10]!, a[11]!, t[0]!, t[1]!, t[2]!) +
    2 * halfAngleTangentSquared(t[last]!, t[last + 1]!, t[last + 2]!, b[9]!, b[10]!, b[11]!);
  for (let i = 3; i <= last; i += 3) {
    sum += halfAngleTangentSquared(t[i - 3]!, t[i - 2]!, t[i - 1]!, t[i]!, t[i + 1]!, t[i + 2]!);
  }
  return 2 * edges * sum;
}

/** Energy of weight: each edge's weight half at either of its nodes. Zero at the origin's height. */
function weightEnergy(state: RodState, edges: number, loads: RodLoads): number {
  if (loads.wx === 0 && loads.wy === 0 && loads.wz === 0) return 0;
  const { nodes } = state;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let k = 0; k <= edges; k++) {
    const share = k === 0 || k === edges ? 0.5 : 1;
    x += share * nodes[3 * k]!;
    y += share * nodes[3 * k + 1]!;
    z += share * nodes[3 * k + 2]!;
  }
  return -(x * loads.wx + y * loads.wy + z * loads.wz) / edges;
}

/** Puts the ends at their clocks and sums the nodes from the tangents. */
export function placeNodes(state: RodState, problem: RodProblem, scale: RodScale): void {
  const { nodes, tangents, poseA } = state;
  poseAt(problem.a, state.clockA, scale, state.poseA);
  poseAt(problem.b, state.clockB, scale, state.poseB);
  const l = 1 / problem.edges;
  let x = poseA[0]!;
  let y = poseA[1]!;
  let z = poseA[2]!;
  nodes[0] = x;
  nodes[1] = y;
  nodes[2] = z;
  for (let i = 0; i < tangents.length; i += 3) {
    x += l * tangents[i]!;
    y += l * tangents[i + 1]!;
    z += l * tangents[i + 2]!;
    nodes[i + 3] = x;
    nodes[i + 4] = y;
    nodes[i + 5] = z;
  }
}

/** All the energy of a placed shape, in EI/L. */
export function rodEnergy(ws: RodWorkspace, scale: RodScale, loads: RodLoads, state: RodState): number {
  const held = contactEnergy(ws, scale, loads, state) + pullEnergy(scale, loads, state);
  const elastic = bendingEnergy(state, ws.edges) + twistEnergy(loads.twist, state);
  return elastic + weightEnergy(state, ws.edges, loads) + held;
}

/** Last node less the place of end B, into `out`; its length is the answer. */
export function closureOf(state: RodState, out: Float64Array): number {
  const at = state.nodes.length - 3;
  for (let i = 0; i < 3; i++) out[i] = state.nodes[at + i]! - state.poseB[i]!;
  return lengthOf(out[0]!, out[1]!, out[2]!);
}
