import { NO_SOURCE, type Rule } from './rule.ts';

const STARVES =
  'that a tight bend close to a pump inlet starves the pump: highpowermedia.com, "Any hose will do"; no kink or tight bend on the suction side of a dry-sump pump: performanceracing.com, "Plumbing nightmares"';

/** Suction: the hose before a pump. */
export const SUCTION_RULES: readonly Rule[] = [
  {
    id: 'suction-calm-length',
    title: 'Hose before a pump in which no bend is tight',
    value: 5,
    unit: 'bores',
    range: { low: 5, high: 10 },
    source: `${NO_SOURCE} for the length (5 to 10 bores of straight pipe before an inlet are usual for pumps at large, from memory); ${STARVES}`,
    grade: 'common-practice',
    dissent: 'up to 10 bores (from memory)',
    overridable: true,
  },
  {
    id: 'suction-calm-radius',
    title: "Bend radius there, over the hose's own limit",
    value: 1.25,
    unit: 'ratio',
    source: `${NO_SOURCE} for the figure; ${STARVES}`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'suction-end-angle',
    title: 'Angle of the end at a pump inlet',
    value: 45,
    unit: 'deg',
    source: `${NO_SOURCE} for the angle; ${STARVES}`,
    grade: 'common-practice',
    overridable: true,
  },
];
