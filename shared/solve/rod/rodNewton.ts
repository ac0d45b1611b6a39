import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { guessMultiplier } from './guessMultiplier.ts';
import { allowedFraction, lineSearch, takeStep } from './lineSearch.ts';
import {
  FIRST_SHIFT,
  MAX_REFUSED,
  MAX_SHIFTS,
  NEUTRAL_SHIFT,
  SADDLE_RESIDUAL,
  SHIFT_GROWTH,
  SHORT_STEP,
  STABLE_SHIFT,
} from './rodLimits.ts';
import { factor, look, moveBy, type RodRun } from './rodRun.ts';
import { sweepForward } from './rodSweep.ts';

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

/** Where Newton's method ended: at an equilibrium, close to one that is no minimum, in ever shorter steps, or nowhere. */
export type NewtonEnd = 'equilibrium' | 'near-saddle' | 'stuck' | 'lost';

function nearSaddle(run: RodRun): boolean {
  return run.residual < SADDLE_RESIDUAL && !factor(run, STABLE_SHIFT);
}

/** A whole Newton step towards an equilibrium of any kind, for who asked for the nearest; false where it is too far. */
function plainStep(run: RodRun): boolean {
  const { ws } = run;
  factor(run, NEUTRAL_SHIFT);
  sweepForward(ws, undefined, ws.step, ws.multiplierStep);
  if (allowedFraction(ws, ws.step) !== 1) return false;
  moveBy(run, ws.step, 1);
  takeStep(run, 1, ws.multiplierStep);
  return true;
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
    if (run.problem.acceptSaddle && run.residual < SADDLE_RESIDUAL && plainStep(run)) continue;
    const least = refused > 0 ? Math.max(FIRST_SHIFT, run.shift * SHIFT_GROWTH ** 2) : NEUTRAL_SHIFT;
    if (!factorConvex(run, least)) return 'lost';
    sweepForward(run.ws, undefined, run.ws.step, run.ws.multiplierStep);
    const fraction = lineSearch(run);
    refused = fraction > 0 ? 0 : refused + 1;
    short = fraction > SHORT_STEP ? 0 : short + 1;
    // Between two surfaces the nearest one, and with it the force, jumps: smaller and smaller steps find no way on.
    if (run.touching && short >= run.patience) return 'stuck';
  }
  return 'equilibrium';
}
