import { expect, test } from 'vitest';
import { bendingStiffness } from '../../../../shared/document/parts/bendingStiffness.ts';
import { torsionalStiffness } from '../../../../shared/document/parts/torsionalStiffness.ts';
import { sampleHose } from '../../../arbitraries/projects.ts';

test('a rubber bar: GJ from the shear modulus and the polar moment, EI from Young’s modulus', () => {
  // E = 6 N/mm2, nu = 1/2, diameter 20 mm: G = E / (2 (1 + nu)) = 2, J = pi d^4 / 32, I = pi d^4 / 64.
  const bendingStiffnessNmm2 = (6 * Math.PI * 20 ** 4) / 64;
  const torsional = (2 * Math.PI * 20 ** 4) / 32;
  expect(torsionalStiffness(sampleHose({ bendingStiffnessNmm2 })).valueNmm2).toBeCloseTo(torsional, 6);
});

test('it is no better known than the bending stiffness, and may well be larger', () => {
  const hose = sampleHose();
  const bending = bendingStiffness(hose);
  const torsional = torsionalStiffness(hose);
  expect(torsional.lowNmm2 / torsional.valueNmm2).toBeCloseTo(bending.lowNmm2 / bending.valueNmm2, 12);
  expect(torsional.highNmm2).toBeGreaterThan(5 * torsional.valueNmm2);
});
