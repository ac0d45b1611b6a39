import { wrapDegrees } from '../../base/units.ts';
import { formatNumber, type Rounding } from './length.ts';

/**
 * A direction on the clock in degrees, 0 up to 360: at most one decimal, none when it is a whole degree. 0 and 360 are
 * the same direction and print the same, `0°`; so does what rounds to 360.
 */
export function formatDegrees(degrees: number): string {
  const tenths = Math.round(wrapDegrees(degrees) * 10) % 3600;
  return `${formatNumber(tenths / 10, tenths % 10 === 0 ? 0 : 1)}°`;
}

/** A size of turn in degrees (a bend, a tolerance, a margin), not wrapped: `90°`, `-2.5°`. */
export function formatTurn(degrees: number, rounding: Rounding = 'nearest'): string {
  return `${formatNumber(degrees, 1, rounding).replace(/\.0$/, '')}°`;
}

/**
 * A direction as a builder says it on a clock face, clockwise from 12 o'clock: `9 o'clock` on the hour (to the tenth of
 * a degree that is printed), else the degrees and the hours it lies between.
 */
export function formatClockHour(clockwiseDeg: number): string {
  const tenths = Math.round(wrapDegrees(clockwiseDeg) * 10) % 3600;
  const hour = Math.floor(tenths / 300);
  const name = (h: number): number => (h % 12 === 0 ? 12 : h % 12);
  if (tenths % 300 === 0) return `${name(hour)} o'clock`;
  return `${formatDegrees(clockwiseDeg)} clockwise from 12 (between ${name(hour)} and ${name(hour + 1)} o'clock)`;
}
