import { NO_SOURCE, type Rule } from './rule.ts';

/** Hoses on taper threads, which come tight at a clock nobody knows before. */
export const TAPER_RULES: readonly Rule[] = [
  {
    id: 'taper-slack',
    title: 'Slack left at every clock at which a taper thread may come tight',
    value: 0,
    unit: 'mm',
    source: 'NAVEDTRA 14105 p. 5-11/5-12: never stretched tight between two fittings',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'taper-range',
    title: "Bend radius and clearance at every clock of a taper thread, as a share of the lay's own limits",
    value: 1,
    unit: 'ratio',
    source: `${NO_SOURCE}: a hose is cut before its taper is tight, so it has to fit wherever that comes tight`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'taper-twist',
    title: 'Twist at any clock of a taper thread, of a hose between two angled ends',
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
