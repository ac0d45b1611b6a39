import { expect, it } from 'vitest';
import { inchesToMm } from '../../../../shared/base/units.ts';
import { bendingStiffness } from '../../../../shared/document/parts/bendingStiffness.ts';
import { centrelineMinRadiusMm } from '../../../../shared/document/parts/centrelineMinRadius.ts';
import { cutOffMm, dropMm } from '../../../../shared/document/parts/cutOff.ts';
import { hoseWeight } from '../../../../shared/document/parts/hoseWeight.ts';
import { outsideDiameterMm } from '../../../../shared/document/parts/outsideDiameter.ts';
import { sampleEnd, sampleHose, sampleSleeve } from '../../../arbitraries/projects.ts';

it('brings an inside radius to the centreline, and leaves a centreline one', () => {
  // -8 hose of R 3.5 in inside and OD 0.62 in: a 90 degree bend takes 5.98 in of hose (worked from hotrodfuelhose.com's 3.5 in).
  const hose = sampleHose({ minBendRadiusMm: inchesToMm(3.5), outsideDiameterMm: inchesToMm(0.62) });
  expect((centrelineMinRadiusMm(hose) * Math.PI) / 2).toBeCloseTo(inchesToMm(5.985), 1);
  expect(centrelineMinRadiusMm({ ...hose, minBendRadiusDatum: 'centreline' })).toBe(inchesToMm(3.5));
});

it('knows C and drop of ends of known geometry', () => {
  const lengths = { seatToBendMm: 30, bendToShoulderMm: 17 };
  expect(cutOffMm({ ...lengths, bendAngleDeg: 0 })).toBe(47);
  expect(dropMm({ ...lengths, bendAngleDeg: 0 })).toBe(0);
  // Square: only the leg along the hose counts, the other is all drop.
  expect(cutOffMm({ ...lengths, bendAngleDeg: 90 })).toBeCloseTo(17, 12);
  expect(dropMm({ ...lengths, bendAngleDeg: 90 })).toBeCloseTo(30, 12);
  expect(cutOffMm({ ...lengths, bendAngleDeg: 60 })).toBeCloseTo(32, 12);
  expect(dropMm({ ...lengths, bendAngleDeg: 30 })).toBeCloseTo(15, 12);
  // Doubled back: the seat lies 13 mm along the hose past the shoulder.
  expect(cutOffMm({ ...lengths, bendAngleDeg: 180 })).toBeCloseTo(-13, 12);
});

it('agrees with the government cut-off factors for a pair of straight -8 ends', () => {
  // NAVEDTRA 14018 Table 5-2: 0.93 in each; TM 1-1500-204-23-2 Table 4-22: 1.86 in the pair.
  const end = sampleEnd({ bendAngleDeg: 0, seatToBendMm: inchesToMm(0.4), bendToShoulderMm: inchesToMm(0.53) });
  expect(2 * cutOffMm(end)).toBeCloseTo(inchesToMm(1.86), 9);
});

it('takes the sleeve for the outside, stretched where it is small', () => {
  expect(outsideDiameterMm(sampleHose())).toBe(15.8);
  expect(outsideDiameterMm(sampleHose(), sampleSleeve())).toBe(22);
  expect(outsideDiameterMm(sampleHose(), sampleSleeve({ insideDiameterMm: 10, outsideDiameterMm: 14 }))).toBeCloseTo(
    19.8,
    12,
  );
});

it('weighs a hose filled with coolant', () => {
  // 10 mm bore: 78.54 mm2, so 0.0785 L/m at 1.042 kg/L.
  const weight = hoseWeight(sampleHose({ insideDiameterMm: 10, weightKgPerM: 0.3 }), 'coolant', sampleSleeve());
  expect(weight.fluidKgPerM).toBeCloseTo(0.08184, 5);
  expect(weight.totalKgPerM).toBeCloseTo(0.3 + 0.08184 + 0.2, 5);
  expect(weight.estimated).toBe(false);
});

it('estimates the dry weight from the wall where none is given, and says so', () => {
  const weight = hoseWeight(sampleHose(), 'air');
  // Wall of 15.8 over 10.3 mm: 112.7 mm2; between solid PTFE (2.2) and steel (7.8).
  expect(weight.estimated).toBe(true);
  expect(weight.dryKgPerM).toBeGreaterThan(0.1127 * 1.2);
  expect(weight.dryKgPerM).toBeLessThan(0.1127 * 7.8);
  expect(weight.totalKgPerM).toBe(weight.dryKgPerM);
});

it('uses a measured stiffness as it is and puts a band round an estimate', () => {
  expect(bendingStiffness(sampleHose({ bendingStiffnessNmm2: 5e4 }))).toEqual({
    valueNmm2: 5e4,
    lowNmm2: 5e4,
    highNmm2: 5e4,
    estimated: false,
  });
  const guess = bendingStiffness(sampleHose());
  expect(guess.estimated).toBe(true);
  expect(guess.lowNmm2).toBeLessThan(guess.valueNmm2 / 2);
  expect(guess.highNmm2).toBeGreaterThan(guess.valueNmm2 * 2);
});

it('scales the estimated stiffness with the fourth power of size', () => {
  const small = bendingStiffness(sampleHose({ outsideDiameterMm: 12, insideDiameterMm: 8 })).valueNmm2;
  const large = bendingStiffness(sampleHose({ outsideDiameterMm: 24, insideDiameterMm: 16 })).valueNmm2;
  expect(large / small).toBeCloseTo(16, 9);
});
