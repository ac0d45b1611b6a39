import { rodEnergy } from './rodEnergy.ts';
import { ESCAPE_TURN, FIRST_SHIFT, MAX_SHIFTS, SHIFT_GROWTH } from './rodLimits.ts';
import { acceptTrial, factor, moveBy, type RodRun } from './rodRun.ts';
import { sweepForward } from './rodSweep.ts';

/** Turns of inverse iteration: the lowest mode stands out by then, and any mix of falling modes would do. */
const INVERSE_ITERATIONS = 6;

const ignoredMultiplier = new Float64Array(3);

/** A fixed, smooth, lopsided pattern that has a part of every mode. */
function pattern(step: Float64Array, edges: number): void {
  for (let k = 0; k < edges; k++) {
    const s = (k + 0.5) / edges;
    step[2 * k] = Math.sin(2.1 * s + 0.4) + 0.5 * Math.cos(5.3 * s);
    step[2 * k + 1] = Math.cos(3.7 * s + 0.2) - 0.6 * Math.sin(6.1 * s);
  }
  step[2 * edges] = 0.31;
  step[2 * edges + 1] = 0.23;
}

/** Scales a movement so that its largest turn of an edge is 1. */
function normalise(step: Float64Array): void {
  let largest = 0;
  for (const turn of step) largest = Math.max(largest, Math.abs(turn));
  if (largest > 0) for (let i = 0; i < step.length; i++) step[i] = step[i]! / largest;
}

function factorShifted(run: RodRun): boolean {
  let shift = FIRST_SHIFT;
  for (let i = 0; i < MAX_SHIFTS; i++, shift *= SHIFT_GROWTH) if (factor(run, shift)) return true;
  return false;
}

/**
 * From an equilibrium that is no minimum, moves the state along the lowest mode of the Hessian on the closure (found
 * by inverse iteration with the shifted system), to the side where the energy is lower. False where no shift makes
 * the system convex. The derivatives in the workspace must be those of the state.
 */
export function leaveSaddle(run: RodRun): boolean {
  const { ws, scale, loads } = run;
  const { step, gradient, closure, edges } = ws;
  closure.fill(0);
  pattern(step, edges);
  for (let turn = 0; turn < INVERSE_ITERATIONS; turn++) {
    normalise(step);
    // A clock weighs as N edges, as it does in the shift.
    for (let i = 0; i < step.length; i++) gradient[i] = -(i < 2 * edges ? 1 : edges) * step[i]!;
    if (!factorShifted(run)) return false;
    sweepForward(ws, undefined, step, ignoredMultiplier);
  }
  normalise(step);
  moveBy(run, step, -ESCAPE_TURN);
  const backward = rodEnergy(ws, scale, loads, ws.trial);
  moveBy(run, step, ESCAPE_TURN);
  // Where both sides are alike (a symmetric saddle) the pattern decides, always the same way.
  if (backward < rodEnergy(ws, scale, loads, ws.trial)) moveBy(run, step, -ESCAPE_TURN);
  acceptTrial(ws);
  return true;
}
