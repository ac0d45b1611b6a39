import type { Finding } from '../../document/lay/schema.ts';
import { formatTurn } from './angle.ts';
import { formatLengthBoth, formatNumber, type Rounding } from './length.ts';
import { formatDash, formatPressure, formatSlack, formatTemperature } from './quantity.ts';

/** A value in a finding's unit, for a reader. Units the trade reads in two systems come out in both. */
export function formatInUnit(value: number, unit: string, rounding: Rounding = 'nearest'): string {
  if (unit === 'mm') return formatLengthBoth(value, rounding, 32);
  if (unit === 'deg' || unit === '°') return formatTurn(value, rounding);
  if (unit === 'C' || unit === '°C' || unit === 'deg C') return formatTemperature(value, rounding);
  if (unit === 'kPa') return formatPressure(value, rounding);
  if (unit === 'ratio' || unit === '1' || unit === 'slack') return formatSlack(value);
  if (unit === 'dash') return formatDash(value);
  return `${plainNumber(value, rounding)} ${unit === 'count' ? '' : unit}`.trim();
}

/** Whole numbers bare, others to two decimals, and what two decimals would hide in powers of ten. */
function plainNumber(value: number, rounding: Rounding): string {
  if (value !== 0 && Math.abs(value) < SMALLEST_PLAIN) return value.toExponential(1);
  return formatNumber(value, Number.isInteger(value) ? 0 : 2, rounding);
}

const SMALLEST_PLAIN = 0.01;

/**
 * Limit, measured value and margin of a finding as text. The measured value is rounded toward its limit's bad side and
 * the margin down, so print never turns a miss into a pass: a lower limit (more is better) rounds the measure down, an
 * upper limit up. Which of the two it is, is read from the signs of margin and of measured - limit.
 */
export function findingNumbers(finding: Finding): { limit: string; measured: string; margin: string } {
  const moreIsBetter = (finding.measured - finding.limit) * finding.margin >= 0;
  return {
    limit: formatInUnit(finding.limit, finding.unit),
    measured: formatInUnit(finding.measured, finding.unit, moreIsBetter ? 'down' : 'up'),
    margin: marginText(finding),
  };
}

/** A margin is a difference: 5 deg C of margin is not 41 deg F, so temperatures are told in C alone. */
function marginText(finding: Finding): string {
  const { margin, unit } = finding;
  if (unit === 'C' || unit === '°C' || unit === 'deg C') return `${formatNumber(margin, 0, 'down')} °C`;
  return formatInUnit(margin, unit, 'down');
}

const SIZED_UNITS = ['mm', 'deg', 'deg C', 'kPa', 'm/s', 'mV', 'months', 's', 'ratio'];

/** Whether a finding's rule is kept or broken, or half kept, and has no size: its figures, 0 and 1, would only say that again. */
export function isYesOrNo({ limit, measured, margin, unit }: Finding): boolean {
  const isBare = [limit, measured].every((value) => value === 0 || value === 0.5 || value === 1);
  return isBare && limit !== measured && margin >= -1 && margin < 0 && !SIZED_UNITS.includes(unit);
}
