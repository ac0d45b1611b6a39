import { fahrenheitToCelsius, KPA_PER_PSI } from '../../base/units.ts';

export type PressureUnit = 'kPa' | 'psi';
export type TemperatureUnit = '°C' | '°F';

/** What a gauge may be marked in, kPa of each. Exact by definition, psi as in `base/units`. */
const KPA_PER: ReadonlyMap<string, number> = new Map([
  ['kpa', 1],
  ['psi', KPA_PER_PSI],
  ['bar', 100],
  ['mbar', 0.1],
  ['mpa', 1000],
]);

/**
 * A pressure as it is typed, in the unit of its field: `60 psi`, `4.1 bar`, `414`; a number alone is in the field's own unit.
 * null = no number, or a unit of something else.
 */
export function readPressure(text: string, field: PressureUnit): number | null {
  const { value, unit } = split(text);
  const factor = unit === '' ? 1 : ratio(KPA_PER.get(unit), KPA_PER.get(field.toLowerCase()));
  return value === null || factor === null ? null : value * factor;
}

/** A temperature as it is typed, in the unit of its field: `250F`, `120 °C`, `120`. null = no number, or a unit of something else. */
export function readTemperature(text: string, field: TemperatureUnit): number | null {
  const { value, unit } = split(text.replace('°', ''));
  if (value === null || !['', 'c', 'f'].includes(unit)) return null;
  const own = field === '°F' ? 'f' : 'c';
  if (unit === '' || unit === own) return value;
  return unit === 'f' ? fahrenheitToCelsius(value) : (value * 9) / 5 + 32;
}

function ratio(of: number | undefined, to: number | undefined): number | null {
  return of === undefined || to === undefined ? null : of / to;
}

/** A number with a decimal point or comma, and the letters behind it. */
function split(text: string): { readonly value: number | null; readonly unit: string } {
  const parts = /^\s*([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*([a-z]*)\s*$/i.exec(text);
  if (parts === null) return { value: null, unit: '' };
  const value = Number((parts[1] as string).replace(',', '.'));
  return { value, unit: (parts[2] as string).toLowerCase() };
}
