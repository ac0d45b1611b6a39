import { NO_SOURCE, type Rule } from './rule.ts';

const SLEEVE = 'a fire sleeve does not raise what the hose bears (NAVEDTRA 14315, fire sleeves)';

/** What the estimated temperatures along a hose are held against. */
export const HEAT_RULES: readonly Rule[] = [
  {
    id: 'heat-liner',
    title: "Estimated temperature of the liner under the hose's own limit by at least",
    value: 0,
    unit: 'deg C',
    source: `the hose's own limit and its source; ${SLEEVE}`,
    grade: 'published',
    dissent: 'an estimate: a temperature measured on the hose outweighs it',
    overridable: true,
  },
  {
    id: 'heat-cover-polyester',
    title: 'Temperature of polyester braid',
    value: 150,
    unit: 'deg C',
    range: { low: 120, high: 150 },
    source: `${NO_SOURCE}; polyester melts at about 255 deg C and loses half its strength by 180 (from memory)`,
    grade: 'common-practice',
    dissent: 'lasting use in textile tables 120 to 130 deg C (from memory)',
    overridable: true,
  },
  {
    id: 'heat-cover-aramid',
    title: 'Temperature of aramid braid',
    value: 200,
    unit: 'deg C',
    range: { low: 180, high: 200 },
    source: `${NO_SOURCE}; aramid chars from about 425 deg C and ages above 180 to 200 (from memory)`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'heat-cover-textile',
    title: 'Temperature of textile braid',
    value: 121,
    unit: 'deg C',
    source: `${NO_SOURCE}; as rubber hose under cotton braid as a whole, 250 F (MIL-DTL-8794F 6.1)`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'heat-cover-rubber',
    title: "Estimated temperature of a rubber cover under the hose's own limit by at least",
    value: 0,
    unit: 'deg C',
    source: "the hose's own limit and its source",
    grade: 'published',
    overridable: true,
  },
  {
    id: 'heat-sleeve',
    title: 'Estimated temperature of the sleeve under its own limit by at least',
    value: 0,
    unit: 'deg C',
    source: `the sleeve's own limit and its source; ${SLEEVE}`,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'heat-end',
    title: "Estimated temperature where the hose leaves an end, under the end's own limit by at least",
    value: 0,
    unit: 'deg C',
    source: "the end's own limit and its source",
    grade: 'published',
    overridable: true,
  },
];
