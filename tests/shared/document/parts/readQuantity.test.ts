import { describe, expect, it } from 'vitest';
import { readPressure, readTemperature } from '../../../../shared/document/parts/readQuantity.ts';

describe('readPressure', () => {
  it('takes a number alone in the unit of its field', () => {
    expect(readPressure('414', 'kPa')).toBe(414);
    expect(readPressure('-33,5', 'kPa')).toBe(-33.5);
    expect(readPressure(' .5 ', 'psi')).toBe(0.5);
  });

  it('takes what gauges are marked in', () => {
    // 1 psi is 6.894757 kPa and 1 bar 100 kPa: NIST SP 811 (2008), table B.8.
    expect(readPressure('60 psi', 'kPa')).toBeCloseTo(413.685, 3);
    expect(readPressure('60PSI', 'psi')).toBe(60);
    expect(readPressure('4 bar', 'kPa')).toBe(400);
    expect(readPressure('1.2 MPa', 'kPa')).toBe(1200);
    expect(readPressure('690 kPa', 'psi')).toBeCloseTo(100.076, 3);
  });

  it('reads nothing from what is no pressure', () => {
    for (const text of ['', 'full', '60 C', '60 constructor', '6 0', '1.2.3', 'Infinity', '1e5'])
      expect(readPressure(text, 'kPa')).toBeNull();
  });
});

describe('readTemperature', () => {
  it('takes degrees C and F, whichever the field has', () => {
    expect(readTemperature('120', '°C')).toBe(120);
    expect(readTemperature('212F', '°C')).toBeCloseTo(100, 12);
    expect(readTemperature('212 °f', '°F')).toBe(212);
    expect(readTemperature('-40 °C', '°F')).toBe(-40);
    expect(readTemperature('100 C', '°F')).toBe(212);
  });

  it('reads nothing from what is no temperature', () => {
    for (const text of ['', 'hot', '60 psi', '300 K']) expect(readTemperature(text, '°C')).toBeNull();
  });
});
