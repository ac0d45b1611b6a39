import type { Lay } from '../../../shared/document/lay/schema.ts';

/** The straight hose on the screen: where a place along it stands, and what size a millimetre has. */
export interface StraightScale {
  readonly pxPerMm: number;
  readonly leftPx: number;
  readonly rightPx: number;
  /** px from the drawing's edge to a place; arc length 0 is shoulder A. Places beyond the shoulders lie on the ends. */
  x(arcLengthMm: number): number;
  /** The place under a pixel, kept on the hose. */
  arcAt(xPx: number): number;
}

export interface Gutters {
  readonly leftPx: number;
  readonly rightPx: number;
}

/** Room left beyond each end's seat, mm, so that the outlet drawn there is not cut off. */
const BEYOND_MM = 14;

/**
 * Fits a laid hose with both its ends between two gutters, END A first. The whole overall length is shown, so 1 mm is the
 * same everywhere along the drawing, and no larger than `mostPxPerMm`: a short hose then leaves room after END B. At least one pixel of room is assumed: a narrower window clips, it never mirrors.
 */
export function straightScale(
  lay: Pick<Lay, 'cutLengthMm' | 'cutOffMm'>,
  widthPx: number,
  gutters: Gutters,
  mostPxPerMm = Number.POSITIVE_INFINITY,
): StraightScale {
  const { a, b } = lay.cutOffMm;
  const beforeMm = Math.max(0, a) + BEYOND_MM;
  const totalMm = beforeMm + lay.cutLengthMm + Math.max(0, b) + BEYOND_MM;
  const room = Math.max(1, widthPx - gutters.leftPx - gutters.rightPx);
  const pxPerMm = Math.min(mostPxPerMm, room / totalMm);
  const zero = gutters.leftPx + beforeMm * pxPerMm;
  return {
    pxPerMm,
    leftPx: gutters.leftPx,
    rightPx: gutters.leftPx + room,
    x: (arcLengthMm) => zero + arcLengthMm * pxPerMm,
    arcAt: (xPx) => Math.min(lay.cutLengthMm, Math.max(0, (xPx - zero) / pxPerMm)),
  };
}

/** One line of the rule: how tall as a share of the tallest, and its number where it has one. */
export interface RuleTick {
  readonly mm: number;
  readonly tall: number;
  readonly number?: string;
}

const MM_STEPS = [1, 2, 5, 10, 20, 50, 100, 200] as const;
const INCH_STEPS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8] as const;
const FINEST_PX = 4;
const NUMBER_PX = 42;

/** Millimetre lines from 0 to `lengthMm`, as fine as the screen carries, numbered where there is room. */
export function mmTicks(lengthMm: number, pxPerMm: number): readonly RuleTick[] {
  const step = MM_STEPS.find((mm) => mm * pxPerMm >= FINEST_PX) ?? 200;
  const numbered = [10, 20, 50, 100, 200, 500].find((mm) => mm * pxPerMm >= NUMBER_PX) ?? 500;
  return Array.from({ length: Math.floor(lengthMm / step) + 1 }, (_, i) => {
    const mm = i * step;
    const tall = mm % numbered === 0 ? 1 : mm % 10 === 0 ? 0.7 : mm % 5 === 0 ? 0.5 : 0.32;
    return { mm, tall, ...(mm % numbered === 0 ? { number: String(mm) } : {}) };
  });
}

/** Inch lines from 0 to `lengthMm`, down to sixteenths where the screen carries them, numbered by whole inches. */
export function inchTicks(lengthMm: number, pxPerMm: number): readonly RuleTick[] {
  const step = INCH_STEPS.find((inch) => inch * 25.4 * pxPerMm >= FINEST_PX) ?? 8;
  const numbered = [1, 2, 4, 8, 16].find((inch) => inch * 25.4 * pxPerMm >= NUMBER_PX * 0.7) ?? 16;
  return Array.from({ length: Math.floor(lengthMm / 25.4 / step) + 1 }, (_, i) => {
    const inch = i * step;
    const tall =
      inch % 1 === 0 ? 1 : inch % 0.5 === 0 ? 0.7 : inch % 0.25 === 0 ? 0.5 : inch % 0.125 === 0 ? 0.4 : 0.28;
    return { mm: inch * 25.4, tall, ...(inch % numbered === 0 ? { number: String(inch) } : {}) };
  });
}
