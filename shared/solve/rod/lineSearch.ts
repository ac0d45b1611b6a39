import { lengthOf } from '../../base/vec3.ts';
import { closureOf, rodEnergy } from './rodEnergy.ts';
import {
  ENERGY_ROUNDING,
  MAX_CLOCK_TURN,
  MAX_EDGE_TURN,
  MAX_HALVINGS,
  PENALTY_RESERVE,
  PENALTY_SHARE,
  SUFFICIENT_DECREASE,
  WHOLE_STEP,
} from './rodLimits.ts';
import { acceptTrial, moveBy, type RodRun } from './rodRun.ts';
import type { RodWorkspace } from './rodState.ts';
import { sweepForward } from './rodSweep.ts';

/** The largest part of a step that turns no edge and no clock too far. */
export function allowedFraction(ws: RodWorkspace, step: Float64Array): number {
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
export function lineSearch(run: RodRun): number {
  const { ws, scale, loads } = run;
  const { step, closure, gradient, multiplier, multiplierStep, correction } = ws;
  const open = lengthOf(closure[0]!, closure[1]!, closure[2]!);
  let slope = 0;
  for (let i = 0; i < step.length; i++) slope += gradient[i]! * step[i]!;
  let curvature = -slope;
  for (let i = 0; i < 3; i++) {
    curvature += multiplierStep[i]! * closure[i]!;
    slope += multiplier[i]! * closure[i]!;
  }
  // The energy's own slope; the penalty must outweigh it where it climbs (Nocedal & Wright, 18.36).
  const needed = (slope + 0.5 * Math.max(0, curvature)) / (PENALTY_SHARE * open);
  if (open > 0 && run.penalty < needed) run.penalty = PENALTY_RESERVE * needed;
  const before = rodEnergy(ws, scale, loads, ws.state) + run.penalty * open;
  const rounding = ENERGY_ROUNDING * (Math.abs(before) + 1);
  const descent = Math.min(0, slope - run.penalty * open);
  let fraction = allowedFraction(ws, step);
  for (let halving = 0; halving < MAX_HALVINGS; halving++) {
    moveBy(run, step, fraction);
    const goal = before + SUFFICIENT_DECREASE * fraction * descent + rounding;
    if (meritOf(run) <= goal) return takeStep(run, fraction, multiplierStep);
    if (halving === 0 && fraction === 1) {
      sweepForward(ws, ws.trialClosure, correction, ws.correctedMultiplier);
      if (allowedFraction(ws, correction) === 1) {
        moveBy(run, correction, 1);
        if (meritOf(run) <= goal) return takeStep(run, 1, ws.correctedMultiplier);
      }
    }
    fraction /= 2;
  }
  return 0;
}

/** Goes over to the trial, a fraction of a step away, and takes the multiplier along. */
export function takeStep(run: RodRun, fraction: number, change: Float64Array): number {
  const { multiplier } = run.ws;
  // Newton's multiplier belongs to the whole step: after a nearly whole one it is the better estimate, after a short
  // one it can be wild and send the iteration round in circles (both measured).
  const share = fraction >= WHOLE_STEP ? 1 : fraction;
  for (let i = 0; i < 3; i++) multiplier[i] = multiplier[i]! + share * change[i]!;
  acceptTrial(run.ws);
  return fraction;
}
