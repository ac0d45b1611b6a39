import { wrapRadians } from '../../base/turnRange.ts';
import { degreesToRadians, radiansToDegrees } from '../../base/units.ts';
import type { SecondWrench } from '../../document/lay/hands.ts';
import type { ResolvedEnd } from '../../document/project/resolve.ts';
import { type Arc, ROUND_RAD } from './arcs.ts';

/** The hex that the second wrench holds, and whether anybody stated it. */
export function heldHex(
  { stack }: ResolvedEnd,
  nutHexMm: number,
): { readonly hexMm: number; readonly assumed: boolean } {
  const hexMm = stack?.adapters.at(-1)?.adapter.hexMm;
  return hexMm === undefined ? { hexMm: nutHexMm, assumed: true } : { hexMm, assumed: false };
}

/** mm. How wide a hand is: common practice, no source. */
const HAND_MM = 90;
/** deg. Clocks at which the second wrench is tried. */
const STEP_DEG = 5;
/** deg. Where two hands squeeze best: common practice, no source. */
const SQUEEZE_DEG = 60;

/** Where the two wrenches are free: the swing of the first, and where the second goes on, rad. */
export interface TwoWrenches {
  readonly swing: Arc;
  readonly swingLengthMm: number;
  readonly hold: readonly Arc[];
  readonly holdLengthMm: number;
  /** how far the first one has to swing */
  readonly askedDeg: number;
}

/**
 * Whether a second wrench can be held while the first one swings: some clock at which it goes on, and `askedDeg` of the first
 * one's swing (all of it where that is less) through which the ends of the two handles are a hand, 90 mm, apart. Tried every
 * 5 degrees and at the ends of every free stretch; the one nearest to 60 degrees off the middle is told.
 */
export function holdFor(two: TwoWrenches): Pick<SecondWrench, 'fits' | 'holdDeg' | 'apartDeg'> {
  const middle = two.swing.from + two.swing.width / 2;
  const apartRad = handsApartRad(Math.min(two.swingLengthMm, two.holdLengthMm));
  const asked = Math.min(degreesToRadians(two.askedDeg), two.swing.width);
  const held = two.hold
    .flatMap(clocksOf)
    .map((clockRad) => ({
      clockRad,
      off: offBy(clockRad, middle),
      fits: widestApart(two.swing, clockRad, apartRad) >= asked,
    }))
    .toSorted((a, b) => Number(b.fits) - Number(a.fits) || wayOff(a.off) - wayOff(b.off));
  const best = held[0];
  if (best === undefined) return { fits: false };
  return {
    fits: best.fits,
    holdDeg: radiansToDegrees(wrapRadians(best.clockRad)),
    apartDeg: radiansToDegrees(best.off),
  };
}

/** Clocks between which the ends of two handles of a length are a hand apart, rad. */
export function handsApartRad(lengthMm: number): number {
  return 2 * Math.asin(Math.min(1, HAND_MM / 2 / lengthMm));
}

function clocksOf({ from, width }: Arc): number[] {
  const count = Math.floor(radiansToDegrees(width) / STEP_DEG);
  return [...Array.from({ length: count + 1 }, (_, i) => from + degreesToRadians(i * STEP_DEG)), from + width];
}

/** rad, 0 to pi. */
function offBy(a: number, b: number): number {
  const on = wrapRadians(a - b);
  return Math.min(on, ROUND_RAD - on);
}

function wayOff(offRad: number): number {
  return Math.abs(offRad - degreesToRadians(SQUEEZE_DEG));
}

/** The widest piece of a swing that keeps `apartRad` from a clock; -1 where none does. */
function widestApart(swing: Arc, clockRad: number, apartRad: number): number {
  if (swing.width >= ROUND_RAD) return ROUND_RAD - 2 * apartRad;
  const start = wrapRadians(swing.from - clockRad);
  // The clock stands at 0 and at one turn; what is apart lies between.
  const pieces = [0, ROUND_RAD].map((turn) => {
    const low = Math.max(start, turn + apartRad);
    return Math.min(start + swing.width, turn + ROUND_RAD - apartRad) - low;
  });
  return Math.max(...pieces);
}
