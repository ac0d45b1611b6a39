import { wrapDegrees } from '../../base/units.ts';

/** The two ends of a run. */
export type EndLetter = 'A' | 'B';

/** Where an end's outlet points on a clock face, degrees clockwise from 12 o'clock as the viewer sees it, 0 to 360. */
export interface FaceHand {
  readonly end: EndLetter;
  readonly clockwiseDeg: number;
}

/** What a viewer sees who holds the straight hose by the near end and looks along it to the far end. */
export interface ClockFace {
  readonly near: FaceHand;
  readonly far: FaceHand;
}

/**
 * Where both outlets point for a viewer at END A or at END B, of a hose whose clock is `clockDeg`.
 *
 *        12 = far outlet          Clock a: hose straight, look along it from the near end; near outlet at 6 o'clock;
 *         |                       counter-clockwise to the far outlet. Turned until the far outlet is at 12 o'clock,
 *   9 ----o---- 3                 the near outlet stands a degrees clockwise from 12: a = 270 puts it at 9 o'clock.
 *    near |  a = 270
 *         6
 *
 * The number is the same from either end, so only the letters change places with the viewer. Source of the rule:
 * MIL-DTL-83796/5 figure 3 note 1; that both readings agree is proved in the tests from vectors. Any finite angle.
 */
export function clockFace(clockDeg: number, viewer: EndLetter): ClockFace {
  const other: EndLetter = viewer === 'A' ? 'B' : 'A';
  return { near: { end: viewer, clockwiseDeg: wrapDegrees(clockDeg) }, far: { end: other, clockwiseDeg: 0 } };
}

/** The clock of the hose that comes out when the angle is read the wrong way round: 360 - a, in [0, 360). */
export function wrongWayRound(clockDeg: number): number {
  return wrapDegrees(360 - clockDeg);
}
