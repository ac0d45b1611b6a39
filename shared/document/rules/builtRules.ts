import { NO_SOURCE, type Rule } from './rule.ts';

/** Hoses made otherwise than planned: within the tolerances of cut and clock, and as the bench measured them. */
export const BUILT_RULES: readonly Rule[] = [
  {
    id: 'built-slack',
    title: 'Slack left in a hose as it was made',
    value: 0,
    unit: 'mm',
    source: 'NAVEDTRA 14105 p. 5-11/5-12: never stretched tight between two fittings',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'built-fits',
    title: "Bend radius and clearance of a hose as it was made, as a share of the lay's own limits",
    value: 1,
    unit: 'ratio',
    source: `${NO_SOURCE}: a hose made otherwise than planned has to keep what the plan kept`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'built-twist',
    title: 'Twist of a hose as it was made, fitted to its ports',
    value: 7,
    unit: 'deg',
    range: { low: 0, high: 7 },
    source:
      'hose trade only (mfcp.com, hose assembly installation tips), in no standard found: 7 degrees of twist takes up to 90 % of the life of a wire-braided hose under pressure, 5 degrees up to 70 %',
    grade: 'published',
    dissent: 'FAA AC 43.13-1B Fig. 9-9 and NAVEDTRA 14105 p. 5-11: a hose is not twisted at all',
    overridable: true,
  },
];
