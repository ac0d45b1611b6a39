import { ROD_CLOSURE_MM, ROD_RESIDUAL } from '../../base/tolerances.ts';
import { lengthOf } from '../../base/vec3.ts';
import { placeDerivatives, placeGradient } from './rodDerivatives.ts';
import { closureOf, placeNodes } from './rodEnergy.ts';
import type { RodLoads } from './rodLoads.ts';
import type { RodProblem } from './rodProblem.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';
import { sweepBack } from './rodSweep.ts';
import { followTwist } from './rodTwist.ts';

/** One relaxation under way. */
export interface RodRun {
  readonly problem: RodProblem;
  readonly scale: RodScale;
  loads: RodLoads;
  readonly ws: RodWorkspace;
  iterations: number;
  readonly maxIterations: number;
  /** as in `RodShape` */
  residual: number;
  /** weight of the closure in the merit */
  penalty: number;
  /** Hessian shift of the last step, in units of EI l / L^2 */
  shift: number;
  touching: boolean;
  /** times the contact was made stiffer */
  stiffenings: number;
  /** times the creases were taken anew */
  creaseRounds: number;
  /** short steps in a row before creases are looked for */
  patience: number;
}

/** Puts `trial` where the state goes by `fraction` of a step: every edge by (t + A a) / |t + A a|, clocks by adding. */
export function moveBy(run: RodRun, step: Float64Array, fraction: number): void {
  const { ws, problem, scale, loads } = run;
  const { bases, edges } = ws;
  const from = ws.state.tangents;
  const to = ws.trial.tangents;
  for (let k = 0; k < edges; k++) {
    const a0 = fraction * step[2 * k]!;
    const a1 = fraction * step[2 * k + 1]!;
    const inv = 1 / Math.sqrt(1 + a0 * a0 + a1 * a1);
    const b = 6 * k;
    const i = 3 * k;
    to[i] = (from[i]! + bases[b]! * a0 + bases[b + 3]! * a1) * inv;
    to[i + 1] = (from[i + 1]! + bases[b + 1]! * a0 + bases[b + 4]! * a1) * inv;
    to[i + 2] = (from[i + 2]! + bases[b + 2]! * a0 + bases[b + 5]! * a1) * inv;
  }
  ws.trial.clockA = ws.state.clockA + fraction * step[2 * edges]!;
  ws.trial.clockB = ws.state.clockB + fraction * step[2 * edges + 1]!;
  placeNodes(ws.trial, problem, scale);
  if (loads.twist !== undefined) followTwist(ws, loads.twist);
}

export function acceptTrial(ws: RodWorkspace): void {
  const old: RodState = ws.state;
  ws.state = ws.trial;
  ws.trial = old;
}

/** Derivatives, gradient, closure and residual at the state; true where it is an equilibrium. */
export function look(run: RodRun): boolean {
  const { ws, scale, loads } = run;
  run.touching = placeDerivatives(ws, scale, loads);
  const unbalanced = placeGradient(ws);
  const gapMm = closureOf(ws.state, ws.closure) * scale.lengthMm;
  const m = ws.multiplier;
  const forces = Math.max(1, lengthOf(m[0]!, m[1]!, m[2]!), lengthOf(loads.wx, loads.wy, loads.wz));
  run.residual = unbalanced / forces;
  return run.residual <= ROD_RESIDUAL && gapMm <= ROD_CLOSURE_MM;
}

/** Factors with the given shift (units of EI l / L^2); true where the system is convex on the closure. */
export function factor(run: RodRun, shift: number): boolean {
  const { ws, problem, loads } = run;
  const twist = loads.twist?.stiffness ?? 0;
  const negative = sweepBack(ws, ws.closure, {
    turningA: problem.a.kind === 'turning',
    turningB: problem.b.kind === 'turning',
    touching: run.touching,
    twist,
    shift: shift / ws.edges,
  });
  return negative === (twist > 0 ? 4 : 3);
}
