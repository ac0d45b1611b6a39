import { KPA_PER_PSI, mmToInches } from '../../base/units.ts';

/** A length for a sentence, both ways: `76.2 mm (3.00 in)`. Rounds to 0.1 mm and 0.01 in. */
export function lengthText(mm: number): string {
  return `${plain(mm, 1)} mm (${plain(mmToInches(mm), 2)} in)`;
}

/** A pressure for a sentence, both ways: `500 kPa (73 psi)`. Rounds to 1 kPa and 1 psi. */
export function pressureText(kPa: number): string {
  return `${plain(kPa, 0)} kPa (${plain(kPa / KPA_PER_PSI, 0)} psi)`;
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
