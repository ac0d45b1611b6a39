import { ROD_CLOSURE_MM, ROD_RESIDUAL } from '../../base/tolerances.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { placeDerivatives, placeGradient } from './rodDerivatives.ts';
import { closureOf, placeNodes, rodEnergy } from './rodEnergy.ts';
import {
  ENERGY_ROUNDING,
  FIRST_SHIFT,
  FORCE_GUESS_RESIDUAL,
  MAX_CLOCK_TURN,
  MAX_EDGE_TURN,
  MAX_HALVINGS,
  MAX_REFUSED,
  MAX_SHIFTS,
  NEUTRAL_SHIFT,
  SADDLE_RESIDUAL,
  SHIFT_GROWTH,
  SHORT_STEP,
  STABLE_SHIFT,
  SUFFICIENT_DECREASE,
  WHOLE_STEP,
} from './rodLimits.ts';
import type { RodLoads } from './rodLoads.ts';
import type { RodProblem } from './rodProblem.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';
import { sweepBack, sweepForward } from './rodSweep.ts';
import { symmetricEigen } from './symmetricEigen.ts';

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
  const { ws, problem, scale } = run;
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
  const forces = Math.max(1, Math.hypot(m[0]!, m[1]!, m[2]!), Math.hypot(loads.wx, loads.wy, loads.wz));
  run.residual = unbalanced / forces;
  return run.residual <= ROD_RESIDUAL && gapMm <= ROD_CLOSURE_MM;
}

/** Factors with the given shift (units of EI l / L^2); true where the system is convex on the closure. */
export function factor(run: RodRun, shift: number): boolean {
  const { ws, problem } = run;
  const negative = sweepBack(ws, ws.closure, {
    turningA: problem.a.kind === 'turning',
    turningB: problem.b.kind === 'turning',
    touching: run.touching,
    shift: shift / ws.edges,
  });
  return negative === 3;
}

/** Raises the shift from `least` until the system is convex on the closure. */
function factorConvex(run: RodRun, least: number): boolean {
  let shift = least;
  for (let i = 0; i < MAX_SHIFTS; i++) {
    if (factor(run, shift)) {
      run.shift = shift;
      return true;
    }
    shift = Math.max(FIRST_SHIFT, shift * SHIFT_GROWTH);
  }
  return false;
}

/** The largest part of a step that turns no edge and no clock too far. */
function allowedFraction(ws: RodWorkspace, step: Float64Array): number {
  let edge = 0;
  for (let i = 0; i < 2 * ws.edges; i++) edge = Math.max(edge, Math.abs(step[i]!));
  const clock = Math.max(Math.abs(step[2 * ws.edges]!), Math.abs(step[2 * ws.edges + 1]!));
  return Math.min(1, MAX_EDGE_TURN / Math.max(edge, MAX_EDGE_TURN), MAX_CLOCK_TURN / Math.max(clock, MAX_CLOCK_TURN));
}

function meritOf(run: RodRun): number {
  const { ws, scale, loads, penalty } = run;
  return rodEnergy(ws, scale, loads, ws.trial) + penalty * closureOf(ws.trial, ws.trialClosure);
}

/**
 * Line search on energy + penalty * |closure|, with one second-order correction of the closure at the full step,
 * which the factored system gives for nothing. The fraction taken; 0 where the step was refused.
 */
function search(run: RodRun): number {
  const { ws, scale, loads } = run;
  const { step, closure, gradient, multiplier, multiplierStep, correction } = ws;
  const open = Math.hypot(closure[0]!, closure[1]!, closure[2]!);
  let slope = 0;
  for (let i = 0; i < step.length; i++) slope += gradient[i]! * step[i]!;
  let curvature = -slope;
  for (let i = 0; i < 3; i++) {
    curvature += multiplierStep[i]! * closure[i]!;
    slope += multiplier[i]! * closure[i]!;
  }
  // The energy's own slope; the penalty must outweigh it where it climbs (Nocedal & Wright, 18.36).
  const needed = (slope + 0.5 * Math.max(0, curvature)) / (0.9 * open);
  if (open > 0 && run.penalty < needed) run.penalty = 1.5 * needed;
  const before = rodEnergy(ws, scale, loads, ws.state) + run.penalty * open;
  const rounding = ENERGY_ROUNDING * (Math.abs(before) + 1);
  const descent = Math.min(0, slope - run.penalty * open);
  let fraction = allowedFraction(ws, step);
  for (let halving = 0; halving < MAX_HALVINGS; halving++) {
    moveBy(run, step, fraction);
    const goal = before + SUFFICIENT_DECREASE * fraction * descent + rounding;
    if (meritOf(run) <= goal) return take(run, fraction, multiplierStep);
    if (halving === 0 && fraction === 1) {
      sweepForward(ws, ws.trialClosure, correction, ws.correctedMultiplier);
      if (allowedFraction(ws, correction) === 1) {
        moveBy(run, correction, 1);
        if (meritOf(run) <= goal) return take(run, 1, ws.correctedMultiplier);
      }
    }
    fraction /= 2;
  }
  return 0;
}

function take(run: RodRun, fraction: number, change: Float64Array): number {
  const { multiplier } = run.ws;
  // Newton's multiplier belongs to the whole step: after a nearly whole one it is the better estimate, after a short
  // one it can be wild and send the iteration round in circles (both measured).
  const share = fraction >= WHOLE_STEP ? 1 : fraction;
  for (let i = 0; i < 3; i++) multiplier[i] = multiplier[i]! + share * change[i]!;
  acceptTrial(run.ws);
  return fraction;
}

/**
 * The end force that leaves the least out of balance at the state as it stands, by least squares over the edges; kept
 * only where it balances nearly everything, as it does for a shape that was at rest before.
 */
function guessMultiplier(run: RodRun): void {
  const { ws } = run;
  const { bases, gradient, border, eigenvalues, eigenvectors, multiplier, edges } = ws;
  look(run);
  const before = run.residual;
  border.fill(0);
  const pull = [0, 0, 0];
  for (let k = 0; k < 2 * edges; k++) {
    for (let r = 0; r < 3; r++) {
      pull[r] = pull[r]! - (bases[3 * k + r]! * gradient[k]!) / edges;
      for (let c = 0; c < 3; c++) border[3 * r + c] = border[3 * r + c]! + bases[3 * k + r]! * bases[3 * k + c]!;
    }
  }
  symmetricEigen(border, 3, eigenvalues, eigenvectors);
  for (let j = 0; j < 3; j++) {
    const share = eigenvalues[j]! / (edges * edges);
    if (share <= Number.EPSILON) continue;
    const along =
      (eigenvectors[j]! * pull[0]! + eigenvectors[3 + j]! * pull[1]! + eigenvectors[6 + j]! * pull[2]!) / share;
    for (let i = 0; i < 3; i++) multiplier[i] = multiplier[i]! + eigenvectors[3 * i + j]! * along;
  }
  look(run);
  if (!(run.residual < FORCE_GUESS_RESIDUAL && run.residual < before)) multiplier.fill(0);
}

/** Where Newton's method ended: at an equilibrium, close to one that is no minimum, in ever shorter steps, or nowhere. */
export type NewtonEnd = 'equilibrium' | 'near-saddle' | 'stuck' | 'lost';

function nearSaddle(run: RodRun): boolean {
  return run.residual < SADDLE_RESIDUAL && !factor(run, STABLE_SHIFT);
}

/**
 * Newton's method on the closure from the workspace's state. With `avoidSaddles` it stops on nearing an equilibrium
 * that is no minimum, where shifted steps would only creep towards it.
 */
export function newton(run: RodRun, watch: Watch, avoidSaddles: boolean): NewtonEnd {
  let refused = 0;
  let short = 0;
  run.penalty = 0;
  if (run.iterations === 0) guessMultiplier(run);
  run.shift = 0;
  while (!look(run)) {
    stopIfCancelled(watch);
    if (run.iterations >= run.maxIterations || refused > MAX_REFUSED) return 'lost';
    if (avoidSaddles && nearSaddle(run)) return 'near-saddle';
    run.iterations++;
    const least = refused > 0 ? Math.max(FIRST_SHIFT, run.shift * SHIFT_GROWTH ** 2) : NEUTRAL_SHIFT;
    if (!factorConvex(run, least)) return 'lost';
    sweepForward(run.ws, undefined, run.ws.step, run.ws.multiplierStep);
    const fraction = search(run);
    refused = fraction > 0 ? 0 : refused + 1;
    short = fraction > SHORT_STEP ? 0 : short + 1;
    // Between two surfaces the nearest one, and with it the force, jumps: smaller and smaller steps find no way on.
    if (run.touching && short >= run.patience) return 'stuck';
  }
  return 'equilibrium';
}
