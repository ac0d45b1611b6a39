import { invariant } from '../../base/invariant.ts';
import { PRINT_STEP_NOISE } from '../../base/tolerances.ts';
import { MM_PER_INCH } from '../../base/units.ts';

/**
 * Which way a printed length may differ from the true one. `up`: a hose cut long is trimmed, cut short it is scrap.
 * `down`: clearances, radii and slack are never printed better than they are. `nearest`: for what is only described.
 */
export type Rounding = 'up' | 'down' | 'nearest';
export type InchDenominator = 16 | 32;

/**
 * The whole number of steps that stands for a count of steps, by the rounding asked for.
 * Any finite count; one within PRINT_STEP_NOISE of a whole number is that whole number: 619.125 mm is 24 3/8 in by
 * whatever sum it was reached, and must not be printed a sixteenth longer for what no ruler and no laser can see.
 */
function wholeSteps(count: number, rounding: Rounding): number {
  const nearest = Math.round(count);
  if (rounding === 'nearest' || Math.abs(count - nearest) <= PRINT_STEP_NOISE) return nearest;
  return rounding === 'up' ? Math.ceil(count) : Math.floor(count);
}

/** A number with fixed decimals, rounded one way; never `-0`. Decimals 0 to 6. The text carries no unit. */
export function formatNumber(value: number, decimals: number, rounding: Rounding = 'nearest'): string {
  invariant(Number.isFinite(value), `formatNumber: expected a finite number, got ${value}`);
  const factor = 10 ** decimals;
  const rounded = wholeSteps(value * factor, rounding) / factor;
  return (rounded === 0 ? 0 : rounded).toFixed(decimals);
}

/** Millimetres for a reader: `420.2 mm`. One decimal unless told otherwise. */
export function formatMm(mm: number, rounding: Rounding = 'nearest', decimals = 1): string {
  return `${formatNumber(mm, decimals, rounding)} mm`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function fraction(steps: number, denominator: InchDenominator): string {
  const whole = Math.floor(steps / denominator);
  const rest = steps - whole * denominator;
  if (rest === 0) return `${whole}`;
  const divisor = greatestCommonDivisor(rest, denominator);
  const part = `${rest / divisor}/${denominator / divisor}`;
  return whole === 0 ? part : `${whole} ${part}`;
}

/**
 * A length in mm as inches with a fraction in lowest terms, as a tape reads: `24 3/8 in`. To the next 1/16 (or 1/32 on
 * request), rounded as told; differs from the true length by less than one step, and never
 * to the wrong side (but for PRINT_STEP_NOISE).
 */
export function formatInches(mm: number, rounding: Rounding = 'nearest', denominator: InchDenominator = 16): string {
  invariant(Number.isFinite(mm), `formatInches: expected a finite length, got ${mm}`);
  const steps = wholeSteps((mm / MM_PER_INCH) * denominator, rounding);
  const sign = steps < 0 ? '-' : '';
  return `${sign}${fraction(Math.abs(steps), denominator)} in`;
}

/** Both units, as every paper prints them: `420.2 mm (16 9/16 in)`. Each is rounded by itself, the same way. */
export function formatLengthBoth(
  mm: number,
  rounding: Rounding = 'nearest',
  denominator: InchDenominator = 16,
): string {
  return `${formatMm(mm, rounding)} (${formatInches(mm, rounding, denominator)})`;
}

/** What to cut: both units, each rounded up; the inch figure is long by less than 1/16 in. */
export function formatCutLength(mm: number): string {
  return formatLengthBoth(mm, 'up');
}

/** A clearance: both units, each rounded down, so paper never promises more room than there is. Inches to 1/32. */
export function formatClearance(mm: number): string {
  return formatLengthBoth(mm, 'down', 32);
}

/** mm. A radius above this bends a metre of hose by less than 5 mm: straight, to any eye. */
const STRAIGHT_ABOVE_MM = 25_000;

/** Whether a least radius is that of a hose without a bend. */
export function isStraight(radiusMm: number): boolean {
  return radiusMm > STRAIGHT_ABOVE_MM;
}

/** A bend radius reached on the run: both units, each rounded down; `straight` where there is no bend. */
export function formatRadius(mm: number): string {
  if (isStraight(mm)) return 'straight';
  return formatLengthBoth(mm, 'down');
}
