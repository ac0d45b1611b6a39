import { KPA_PER_PSI, psiToKpa } from '../../base/units.ts';
import type { Fluid, Service, Vehicle } from '../project/schema.ts';

/** A test of a whole system once its hoses are in it, at a pressure far below what a hose bears. */
export interface SystemTest {
  readonly system: 'exhaust' | 'fuel system';
  /** rule of the pack that has its pressure */
  readonly rule: 'exhaust-test-pressure' | 'fuel-test-pressure';
  readonly pressureKpa: number;
  /** the same in words: `27.6 kPa (4 psi)` */
  readonly pressure: string;
  /** absent = no time is published */
  readonly holdS?: number;
  /** what it has to stand, in words */
  readonly words: string;
  readonly caution: string;
  readonly source: string;
}

const PETROL: readonly Fluid[] = ['petrol', 'e85'];

export const EXHAUST_TEST: SystemTest = {
  system: 'exhaust',
  rule: 'exhaust-test-pressure',
  pressureKpa: psiToKpa(4),
  pressure: text(psiToKpa(4)),
  holdS: 300,
  words: `The whole exhaust, its outlet closed, holds ${text(psiToKpa(4))} for 5 minutes and loses nothing; asked for with a petrol engine, good with any.`,
  caution: 'Exhaust gas kills without a smell: an alarm for carbon monoxide where people sleep.',
  source: 'ABYC P-1 on exhausts of petrol engines, told at marinemechanic.com p. 68',
};

export const FUEL_TEST: SystemTest = {
  system: 'fuel system',
  rule: 'fuel-test-pressure',
  pressureKpa: psiToKpa(3),
  pressure: text(psiToKpa(3)),
  words: `The whole fuel system does not leak under air or inert gas at ${text(psiToKpa(3))}, or at one and a half times what its own fuel makes at its lowest place when it is full to overflowing, whichever is more.`,
  caution:
    'No more than that: gas bursts what liquid only wets, and a tank may bear less. No fuel about, no flame, no spark.',
  source: '33 CFR 183.542',
};

/** The test that a published code asks of the system that a hose belongs to; undefined = none was found. */
export function systemTest(
  { purpose, fluid }: Pick<Service, 'purpose' | 'fluid'>,
  vehicle?: Vehicle,
): SystemTest | undefined {
  if (purpose === 'wet-exhaust') return EXHAUST_TEST;
  return vehicle === 'boat' && PETROL.includes(fluid) ? FUEL_TEST : undefined;
}

/** `27.6 kPa (4 psi)` */
function text(kPa: number): string {
  return `${kPa.toFixed(1)} kPa (${(kPa / KPA_PER_PSI).toFixed(0)} psi)`;
}
