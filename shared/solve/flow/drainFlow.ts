import { GRAVITY_M_PER_S2 } from '../../base/units.ts';
import { darcyFactor } from './darcyFactor.ts';

/** Steps of the fixed point between speed and friction; each gains about a digit. */
const STEPS = 60;

/**
 * L/min that a round pipe carries by its fall alone when full, its pressure the same at both ends. boreMm; fallSine: sine
 * of its slope, above 0; viscosityMm2PerS; roughnessMm. Laminar: Hagen and Poiseuille, exact; else Darcy and Weisbach
 * with Colebrook's factor; never less than `leastFactor`, which a corrugated bore has. Half full it carries half of that at the same slope: by symmetry when laminar; by equal
 * hydraulic radius when turbulent.
 */
export function gravityFlowLPerMin(
  boreMm: number,
  fallSine: number,
  viscosityMm2PerS: number,
  roughnessMm: number,
  leastFactor = 0,
): number {
  const bore = boreMm / 1000;
  const viscosity = viscosityMm2PerS / 1e6;
  const pull = 2 * GRAVITY_M_PER_S2 * fallSine * bore;
  let speed = (GRAVITY_M_PER_S2 * fallSine * bore ** 2) / (32 * viscosity);
  const reynolds = (): number => (speed * bore) / viscosity;
  // Where the laminar speed would be past the laminar range, friction holds it back further.
  for (let step = 0; step < STEPS; step++) {
    const next = Math.sqrt(pull / Math.max(leastFactor, darcyFactor(Math.max(reynolds(), 1e-9), roughnessMm / boreMm)));
    if (Math.abs(next - speed) < 1e-12 * speed) break;
    speed = Math.sqrt(speed * next);
  }
  return speed * (Math.PI / 4) * bore ** 2 * 6e4;
}
