import type { ContactField, RodProblem, RodPull } from './rodProblem.ts';
import type { RodScale } from './rodState.ts';
import { type TwistLoad, twistLoad } from './rodTwist.ts';

/** Loads in the units of the relaxation. */
export interface RodLoads {
  /** weight per length times the unit of gravity, EI/L^3 */
  readonly wx: number;
  readonly wy: number;
  readonly wz: number;
  readonly contact: ContactField | undefined;
  readonly pulls: readonly RodPull[];
  readonly twist: TwistLoad | undefined;
  /** energy of a node pressed in by g mm: half of this times g^2 */
  readonly pressPerMm2: number;
}

export function rodLoads(problem: RodProblem, scale: RodScale, stiffnessNPerMm: number): RodLoads {
  const weight = (problem.weightNPerMm * scale.lengthMm) / scale.forceN;
  return {
    wx: weight * problem.down[0],
    wy: weight * problem.down[1],
    wz: weight * problem.down[2],
    contact: problem.contact,
    pulls: problem.pulls ?? [],
    twist: twistLoad(problem),
    pressPerMm2: stiffnessNPerMm / scale.energyNmm,
  };
}
