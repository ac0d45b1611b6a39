import { degreesApart, wrapDegrees } from '../../base/units.ts';

/** A clock as a part number of MIL-DTL-83796/5 states it. */
export interface ClockCode {
  /** two digits: the angle over 5 */
  readonly code: string;
  /** the angle that the code stands for */
  readonly codedDeg: number;
  /** how far that is from the angle asked for; the code cannot say less than 5 degrees */
  readonly offDeg: number;
}

/**
 * The two digits for a clock in a part number: the angle in steps of 5 degrees, 50 degrees = 10, 30 degrees = 06
 * (MIL-DTL-83796/5 Fig. 3 note 4; MIL-DTL-83796B 1.2), to the nearest step. Any finite angle, in the program's convention, which is that
 * document's.
 */
export function clockCode(clockDeg: number): ClockCode {
  const steps = Math.round(wrapDegrees(clockDeg) / CODE_STEP_DEG) % STEPS;
  const codedDeg = steps * CODE_STEP_DEG;
  return { code: `${steps}`.padStart(2, '0'), codedDeg, offDeg: degreesApart(codedDeg, clockDeg) };
}

const CODE_STEP_DEG = 5;
const STEPS = 72;
