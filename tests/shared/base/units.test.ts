import { describe, expect, it } from 'vitest';
import {
  degreesApart,
  fahrenheitToCelsius,
  inchesToMm,
  mmToInches,
  psiToKpa,
  wrapDegrees,
} from '../../../shared/base/units.ts';

describe('units', () => {
  it('converts by the defined factors', () => {
    expect(inchesToMm(1)).toBe(25.4); // exact by definition since 1959
    expect(mmToInches(25.4)).toBe(1);
    // FAA AC 43.13-1B Table 9-3, -4: 3,000 psi; 206.8 bar to the printed digit.
    expect(psiToKpa(3000) / 100).toBeCloseTo(206.8, 1);
    expect(fahrenheitToCelsius(212)).toBe(100);
    // SAE AS1946F: 450 F printed as 232 C.
    expect(Math.round(fahrenheitToCelsius(450))).toBe(232);
  });

  it('keeps clock angles in one turn and measures the short way round', () => {
    expect(wrapDegrees(-90)).toBe(270);
    expect(wrapDegrees(720)).toBe(0);
    expect(degreesApart(359.9, 0.1)).toBeCloseTo(0.2, 9);
    expect(degreesApart(10, 200)).toBe(170);
  });
});
