import { bendingStiffness } from './bendingStiffness.ts';
import type { Hose } from './schema.ts';

/** A torsional stiffness and how far to trust it: always an estimate. */
export interface TorsionalStiffness {
  /** GJ, N mm2: a hose of length L wrung by the angle t (rad) resists with the moment GJ t / L */
  readonly valueNmm2: number;
  /** The true one probably lies within these. N mm2 */
  readonly lowNmm2: number;
  readonly highNmm2: number;
}

/**
 * GJ / EI of a bar or round tube of one material alike in all directions is 1 / (1 + nu), whatever its diameters (G = E / 2
 * / (1 + nu), and J = 2 I for a round section); rubber hardly changes its volume, nu = 1/2 (Timoshenko, "Strength of
 * Materials", from memory). For hoses no source: a corrugated core, and a braid whose wires slide as the hose bends but lock
 * as it is wrung, make it stiffer against wringing than this, never much softer.
 */
const TORSION_OVER_BENDING = 2 / 3;
/** How many times stiffer than that a hose may be against wringing. No source: a guess at what a locked braid does. */
const LOCKED_BRAID_FACTOR = 10;

/**
 * The hose's stiffness against being wrung, from its bending stiffness as given or estimated. Good for which way a hose
 * with locked ends moves and roughly how far; a moment worked out with it is more likely too small than too large, and is
 * no figure to judge a fitting or its thread by.
 */
export function torsionalStiffness(hose: Hose): TorsionalStiffness {
  const bending = bendingStiffness(hose);
  return {
    valueNmm2: TORSION_OVER_BENDING * bending.valueNmm2,
    lowNmm2: TORSION_OVER_BENDING * bending.lowNmm2,
    highNmm2: LOCKED_BRAID_FACTOR * TORSION_OVER_BENDING * bending.highNmm2,
  };
}
