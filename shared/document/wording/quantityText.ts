import { KPA_PER_PSI, MM_PER_INCH, mmToInches } from '../../base/units.ts';

/** A length for a sentence, both ways: `76.2 mm (3.00 in)`. Rounds to 0.1 mm and 0.01 in. */
export function lengthText(mm: number): string {
  return `${plain(mm, 1)} mm (${plain(mmToInches(mm), 2)} in)`;
}

/** A pressure for a sentence, both ways: `500 kPa (73 psi)`. Rounds to 1 kPa and 1 psi. */
export function pressureText(kPa: number): string {
  return `${plain(kPa, 0)} kPa (${plain(kPa / KPA_PER_PSI, 0)} psi)`;
}

/** A flow speed for a sentence, both ways: `1.48 m/s (4.9 ft/s)`. */
export function speedText(metresPerSecond: number): string {
  return `${plain(metresPerSecond, 2)} m/s (${plain((metresPerSecond * 1000) / (12 * MM_PER_INCH), 1)} ft/s)`;
}

/** A flow for a sentence: `45.0 L/min`. */
export function flowText(litresPerMinute: number): string {
  return `${plain(litresPerMinute, 1)} L/min`;
}

/** A temperature for a sentence, both ways: `150 deg C (302 F)`. Rounds to 1 degree. */
export function temperatureText(celsius: number): string {
  return `${plain(celsius, 0)} deg C (${plain(celsius * 1.8 + 32, 0)} F)`;
}

/** A ratio for a sentence, as per cent: `5.0 %`. */
export function percentText(ratio: number): string {
  return `${plain(ratio * 100, 1)} %`;
}

/** An angle in degrees for a sentence: `15.0 degrees`. */
export function degreesText(deg: number): string {
  return `${plain(deg, 1)} degrees`;
}

/** A number with fixed decimals that never reads -0.0. */
function plain(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}
