import { NO_SOURCE, type Rule } from './rule.ts';

/** Bends: how near a hose may come to its maker's least radius, and how soon after an end it may bend. */
export const BEND_RULES: readonly Rule[] = [
  {
    id: 'self-contact',
    title: 'Distance of a hose from itself where it passes itself, at least',
    value: 0,
    unit: 'mm',
    source: `${NO_SOURCE}: a hose that lies on itself wears through both`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'bend-radius',
    title: "Least bend radius over the hose's own limit",
    value: 1,
    unit: 'ratio',
    source:
      "the hose's own figure and its source; inside of bend for rubber and PTFE, centreline for metal (Rubber Fab, Bend radius; SAE J343 2016-05)",
    grade: 'published',
    overridable: false,
  },
  {
    id: 'straight-tail',
    title: 'Straight hose next to an end',
    value: 2,
    unit: 'hose diameters',
    source: 'FAA-H-8083-30 p. 7-19: straight from the end fittings for at least 2 hose diameters',
    grade: 'published',
    dissent:
      'trade: 1 to 2 hose diameters (common practice, no source); DIN 20066: about 1.5 x outside diameter (from memory); a German hose guide: 2 to 3 x nominal bore',
    overridable: true,
  },
];
