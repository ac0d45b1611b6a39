import { describe, expect, it } from 'vitest';
import { systemTest } from '../../../../shared/document/proof/systemTest.ts';

describe('the test of a whole system', () => {
  // ABYC P-1, told at marinemechanic.com p. 68: 4 psi for 5 minutes, no loss; 4 x 6.894757 kPa
  it('of a wet exhaust is 27.6 kPa for five minutes, on any vehicle that has one', () => {
    const test = systemTest({ purpose: 'wet-exhaust', fluid: 'exhaust-water' });
    expect(test).toMatchObject({ system: 'exhaust', holdS: 300 });
    expect(test?.pressureKpa).toBeCloseTo(27.579, 3);
    expect(test?.words).toContain('27.6 kPa (4 psi) for 5 minutes');
    expect(test?.caution).toContain('carbon monoxide');
  });

  // 33 CFR 183.542: the greater of 3 psi and one and a half times the head in the lowest part; air or inert gas; no time
  it('of the petrol in a boat is 20.7 kPa or half as much again as its head, and in a car none', () => {
    const test = systemTest({ purpose: 'fuel', fluid: 'petrol' }, 'boat');
    expect(test).toMatchObject({ system: 'fuel system', source: '33 CFR 183.542' });
    expect(test?.pressureKpa).toBeCloseTo(20.684, 3);
    expect(test?.holdS).toBeUndefined();
    expect(test?.words).toMatch(/20\.7 kPa \(3 psi\).*one and a half times.*whichever is more/);
    expect(systemTest({ purpose: 'fuel', fluid: 'petrol' }, 'car')).toBeUndefined();
    expect(systemTest({ purpose: 'fuel', fluid: 'petrol' })).toBeUndefined();
    expect(systemTest({ purpose: 'fuel', fluid: 'diesel' }, 'boat')).toBeUndefined();
    expect(systemTest({ purpose: 'coolant', fluid: 'coolant' }, 'boat')).toBeUndefined();
  });
});
