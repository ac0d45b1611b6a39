import { KPA_PER_PSI } from '../../base/units.ts';
import { formatNumber, type Rounding } from './length.ts';

/** Slack, live over taut less one, as a percentage rounded down: `5.0 %`. Paper never shows more slack than there is. */
export function formatSlack(slack: number): string {
  return `${formatNumber(slack * 100, 1, 'down')} %`;
}

/** A temperature in deg C with deg F beside it, whole degrees: `120 °C (248 °F)`. */
export function formatTemperature(celsius: number, rounding: Rounding = 'nearest'): string {
  return `${formatNumber(celsius, 0, rounding)} °C (${formatNumber((celsius * 9) / 5 + 32, 0, rounding)} °F)`;
}

/** A difference of temperatures in deg C with deg F beside it, whole degrees: `20 °C (36 °F)`. */
export function formatTemperatureDifference(celsius: number, rounding: Rounding = 'nearest'): string {
  return `${formatNumber(celsius, 0, rounding)} °C (${formatNumber((celsius * 9) / 5, 0, rounding)} °F)`;
}

/** A pressure in kPa with psi beside it, whole numbers: `690 kPa (100 psi)`. */
export function formatPressure(kpa: number, rounding: Rounding = 'nearest'): string {
  return `${formatNumber(kpa, 0, rounding)} kPa (${formatNumber(kpa / KPA_PER_PSI, 0, rounding)} psi)`;
}

/** What something costs, in the user's own money, which has no name here: `48.20`. */
export function formatCost(cost: number): string {
  return formatNumber(cost, 2);
}

/** A flow in L/min: `45.0 L/min`. */
export function formatFlow(litresPerMinute: number): string {
  return `${formatNumber(litresPerMinute, 1)} L/min`;
}

/** A dash size, sixteenths of an inch of nominal bore, as the trade writes it: `-8`. */
export function formatDash(dash: number): string {
  return `-${dash}`;
}

/** A pressure that is known in a band: `about 4.1 kPa (0.6 psi), between 3.0 and 6.2 kPa`. The band's edges are rounded outwards. */
export function formatPressureBand({ low, likely, high }: { low: number; likely: number; high: number }): string {
  const psi = formatNumber(likely / KPA_PER_PSI, 1);
  const band = `${formatNumber(low, 1, 'down')} and ${formatNumber(high, 1, 'up')} kPa`;
  return `about ${formatNumber(likely, 1)} kPa (${psi} psi), between ${band}`;
}

/** A temperature that is known in a band, deg C alone: `about 135 °C, 104 to 182`. The band's edges are rounded outwards. */
export function formatTemperatureBand({ low, likely, high }: { low: number; likely: number; high: number }): string {
  return `about ${formatNumber(likely, 0)} °C, ${formatNumber(low, 0, 'down')} to ${formatNumber(high, 0, 'up')}`;
}
