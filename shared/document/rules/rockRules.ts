import { NO_SOURCE, type Rule } from './rule.ts';

/** Hoses between bodies that move against each other. */
export const ROCK_RULES: readonly Rule[] = [
  {
    id: 'rock-slack',
    title: "Slack left at the extremes of the bodies' motion",
    value: 0,
    unit: 'mm',
    source: 'NAVEDTRA 14105 p. 5-11/5-12: never stretched tight between two fittings',
    grade: 'published',
    dissent:
      'US Army AL0907 p. 59: 1-1/2 in (38 mm) of slack between the last support and an engine, as fitted, whatever its movement',
    overridable: true,
  },
  {
    id: 'rock-radius',
    title: "Least bend radius at the extremes of the bodies' motion, over the hose's own",
    value: 1,
    unit: 'ratio',
    source: `${NO_SOURCE}: the hose maker's least radius holds also while the hose is worked`,
    grade: 'common-practice',
    dissent:
      'NAVEDTRA 14018 p. 5-27: bends that flex need the least radius times a factor N, above 1 (in a figure only)',
    overridable: true,
  },
  {
    id: 'rock-clearance',
    title: "Clearance at the extremes of the bodies' motion, as a share of what is asked at rest",
    value: 1,
    unit: 'ratio',
    source: `${NO_SOURCE}: what a hose must keep from a thing it keeps wherever the thing goes`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'rock-end-room',
    title:
      "Room round the ends themselves, at the collar, to what moves against them at the extremes of the bodies' motion",
    value: 3,
    unit: 'mm',
    source: `${NO_SOURCE}: mounts give more than is stated when they age, and what strikes an end breaks it`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'rock-twist',
    title: "Twist at the extremes of the bodies' motion",
    value: 7,
    unit: 'deg',
    range: { low: 0, high: 7 },
    source:
      'hose trade only (mfcp.com, hose assembly installation tips), in no standard found: 7 degrees of twist takes up to 90 % of the life of a wire-braided hose under pressure, 5 degrees up to 70 %',
    grade: 'published',
    dissent:
      'FAA AC 43.13-1B Fig. 9-9 and NAVEDTRA 14105 p. 5-11: a hose is not twisted at all; another hose vendor: 7 degrees takes about 80 %',
    overridable: true,
  },
  {
    id: 'rock-settles',
    title: "Extremes of the bodies' motion at which no lay at rest was found",
    value: 0,
    unit: 'count',
    source: `${NO_SOURCE}: what could not be laid is not known to be sound`,
    grade: 'common-practice',
    overridable: false,
  },
];
