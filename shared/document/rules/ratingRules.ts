import type { Rule } from './rule.ts';

/** What hose and ends are rated for by their makers. */
export const RATING_RULES: readonly Rule[] = [
  {
    id: 'pressure-rating',
    title: "Working pressure over the hose's own limit",
    value: 1,
    unit: 'ratio',
    source:
      "the hose's own figure and its source; highest temperature and pressure are not to be used together (FAA AC 43.13-1B Table 9-3, p. 9-22)",
    grade: 'published',
    overridable: false,
  },
  {
    id: 'burst-multiple',
    title: "A hose's least burst pressure over its working pressure, at least",
    value: 4,
    unit: 'ratio',
    range: { low: 3.33, high: 5 },
    source: 'MIL-DTL-17505F 4.7.7: a burst test of at least 4 times the working pressure',
    grade: 'published',
    dissent: 'FAA AC 43.13-1B Table 9-3, p. 9-22, prints 3.33 to 5 times by size',
    overridable: true,
  },
  {
    id: 'temperature-rating',
    title: "Fluid's temperature inside the hose's own limits by at least",
    value: 0,
    unit: 'deg C',
    source: "the hose's own figures and their source; a fire sleeve does not raise them (NAVEDTRA 14315, fire sleeves)",
    grade: 'published',
    overridable: false,
  },
  {
    id: 'end-temperature-rating',
    title: "Fluid's temperature under an end's own limit by at least",
    value: 0,
    unit: 'deg C',
    source: "the end's own figure and its source",
    grade: 'published',
    overridable: false,
  },
  {
    id: 'aluminium-end-temperature',
    title: 'Temperature of a PTFE hose with aluminium ends',
    value: 135,
    unit: 'deg C',
    source: 'SAE AS1946F 1.2.1, Class II: 275 F with aluminium fittings, 450 F with steel',
    grade: 'published',
    dissent: 'some end makers rate their aluminium ends higher; go by the maker of the ends in hand',
    overridable: true,
  },
];
