import { inchesToMm } from '../../base/units.ts';
import { EXHAUST_TEST, FUEL_TEST } from '../proof/systemTest.ts';
import type { Rule } from './rule.ts';

/** Who asks that joints can be come at. */
export const ACCESS_SOURCE =
  'proboat.com, "Attention to detail", 4 June 2010, on ABYC H-24 and H-33; all fittings, joints and clamps of an exhaust: ABYC P-1, told at marinemechanic.com p. 68; fuel lines and fittings: 46 CFR 119.455(b)';

/** Fuel lines and exhausts of boats. */
export const MARINE_RULES: readonly Rule[] = [
  {
    id: 'copper-off-aluminium',
    title: 'Brass or bronze straight on an aluminium fuel tank or its fitting plate',
    value: 0,
    unit: 'count',
    source:
      'ABYC 33.18.3.3.1, quoted at plasticclassicforum.com t=2411: copper alloys kept off aluminium tanks by a barrier such as 300 series stainless; the same: boats.com, "Keep aluminum and brass separated in the marine environment"',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'joint-access',
    title: 'Joints of fuel and exhaust hose on a boat that a hand comes to (1 = it does)',
    value: 1,
    unit: 'count',
    source: ACCESS_SOURCE,
    grade: 'published',
    dissent:
      'a hatch or panels that screwdriver or wrench open are enough; more than common hand tools, a saw say, is not',
    overridable: true,
  },
  {
    id: 'exhaust-test-pressure',
    title: 'Pressure that a whole exhaust has held, at least',
    value: EXHAUST_TEST.pressureKpa,
    unit: 'kPa',
    source: EXHAUST_TEST.source,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'exhaust-test-hold',
    title: 'Time that a whole exhaust has held its test pressure, at least',
    value: EXHAUST_TEST.holdS ?? 0,
    unit: 's',
    source: EXHAUST_TEST.source,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'fuel-test-pressure',
    title: 'Pressure that the fuel system of a petrol boat has held, at least',
    value: FUEL_TEST.pressureKpa,
    unit: 'kPa',
    source: `${FUEL_TEST.source}: 3 psi, or one and a half times its own head where that is more`,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'system-test-passed',
    title: 'Systems that lost pressure in their test (1 = it did)',
    value: 0,
    unit: 'count',
    source: `${EXHAUST_TEST.source}; ${FUEL_TEST.source}`,
    grade: 'published',
    overridable: false,
  },
  {
    id: 'rigid-line-clamp',
    title: 'A rigid fuel line is first held from its joint with the hose within',
    value: inchesToMm(4),
    unit: 'mm',
    source: '33 CFR 183.562(b), petrol boats: attached to the structure within four inches of its flexible line',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'rigid-line-known',
    title: 'Rigid fuel lines of which it is stated where they are first held (1 = yes)',
    value: 1,
    unit: 'count',
    source: '33 CFR 183.562(b), petrol boats: attached to the structure within four inches of its flexible line',
    grade: 'published',
    overridable: true,
  },
];
