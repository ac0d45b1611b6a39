/**
 * Units and their only conversions. Inside the program: mm, radians, seconds, newtons, degrees Celsius, kPa, L/min.
 * Files and fields are converted at the door they come in by, numbers for readers at the door they leave by.
 * Factors are exact by definition (international inch, 1959), except psi, which is rounded at the tenth digit.
 */
export const MM_PER_INCH = 25.4;
export const KPA_PER_PSI = 6.894757293;
/** Inch-pound force in newton metres: 0.45359237 kg x 9.80665 m/s2 x 0.0254 m, rounded at the tenth digit. */
export const NM_PER_INCH_POUND = 0.112984829;

/** m/s^2, standard gravity: exact by definition (CGPM 1901). */
export const GRAVITY_M_PER_S2 = 9.80665;

export const LENGTH_UNITS = ['mm', 'cm', 'm', 'in'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];
export const MM_PER: Record<LengthUnit, number> = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH };

export function inchesToMm(inches: number): number {
  return inches * MM_PER_INCH;
}

export function mmToInches(mm: number): number {
  return mm / MM_PER_INCH;
}

export function inchPoundsToNewtonMetres(inchPounds: number): number {
  return inchPounds * NM_PER_INCH_POUND;
}

export function psiToKpa(psi: number): number {
  return psi * KPA_PER_PSI;
}

export function degreesToRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

export function radiansToDegrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

export function fahrenheitToCelsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** An angle in degrees brought into [0, 360). */
export function wrapDegrees(degrees: number): number {
  const wrapped = degrees % 360;
  return wrapped < 0 ? wrapped + 360 : wrapped;
}

/** How far apart two directions on the clock are, in degrees, 0 to 180. 359.9 and 0.1 are 0.2 apart. */
export function degreesApart(a: number, b: number): number {
  const d = wrapDegrees(a - b);
  return d > 180 ? 360 - d : d;
}
