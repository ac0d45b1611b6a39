import { inchesToMm } from '../../base/units.ts';
import type { Rule } from './rule.ts';

const BARE_END =
  'passagemaker.com, "Hose clamp installation and use": 1/4 in of hose seen between band and hose end, about 1/4 in between two bands';

/** Hose clamps over barbs. */
export const HOSE_CLAMP_RULES: readonly Rule[] = [
  {
    id: 'hose-clamps-known',
    title: 'Clamped joints of which it is stated how the hose clamps sit (1 = yes)',
    value: 1,
    unit: 'count',
    source: '33 CFR 183.558(c) and 183.560: hose clamps as one of three ways to hold fuel hose, and how they sit',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'exhaust-hose-clamps',
    title: 'Hose clamps at each end of a wet exhaust hose, at least',
    value: 2,
    unit: 'count',
    source:
      'ABYC P-1.7.1.10.1, quoted at clayton-marine-surveys.com, "Exhaust system dangers": at least two that do not overlap at each end; boats.com, "Double hose clamps: ABYC required?"',
    grade: 'published',
    dissent:
      'a second clamp that does not bear on the barb does harm (cruisingworld.com, "Fuel system double hose clamps?")',
    overridable: true,
  },
  {
    id: 'filler-hose-clamps',
    title: "Hose clamps at each end of a boat's fuel filler hose, at least",
    value: 2,
    unit: 'count',
    source: '33 CFR 183.564(b)(3): two adjacent metallic hose clamps that do not depend on a spring alone',
    grade: 'published',
    dissent: 'or a swaged sleeve, or a sleeve and threaded insert (33 CFR 183.564(b)(1) and (2))',
    overridable: true,
  },
  {
    id: 'filler-clamp-band',
    title: "Band of a hose clamp on a boat's fuel filler hose, at least",
    value: inchesToMm(1 / 2),
    unit: 'mm',
    source: '33 CFR 183.564(d)(1): a nominal band width of at least one-half inch',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'hose-clamp-from-end',
    title: 'Hose to be seen between its end and the nearest hose clamp, at least',
    value: inchesToMm(1 / 4),
    unit: 'mm',
    source: `${BARE_END}; at least 1/4 in beyond the clamp: a clamp maker's guide (manualshelf 626025e)`,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'hose-clamps-apart',
    title: 'Hose between two hose clamps',
    value: inchesToMm(1 / 4),
    unit: 'mm',
    source: BARE_END,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'hose-clamps-spring',
    title: "Hose clamps on a boat's fuel hose that hold by a spring alone",
    value: 0,
    unit: 'count',
    source:
      '33 CFR 183.560(d): not depend solely on the spring tension of the clamp, of lines and vents; 183.564(b)(3) the same of fillers',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'hose-clamps-on-barb',
    title: 'Barb left under the hose beyond the last hose clamp, at least',
    value: 0,
    unit: 'mm',
    source:
      '33 CFR 183.560(c): beyond the bead or flare, or over the serrations; that one past the barb draws the hose off: cruisingworld.com, "Fuel system double hose clamps?"',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'hose-clamps-on-ptfe',
    title: 'Hose clamps on PTFE hose',
    value: 0,
    unit: 'count',
    source:
      '33 CFR 183.560(a): with hose designed for clamps; that PTFE hose is not, and does not grip a barb: common practice, no source',
    grade: 'published',
    overridable: false,
  },
  {
    id: 'hose-clamps-lifeline',
    title: 'Hose clamps where a lost hose burns the car or the engine',
    value: 0,
    unit: 'count',
    source:
      'forbbodiesonly.com, "No hose clamps allowed": drag racing rules let none be on fuel lines but the car maker\'s own; on oil under pressure: common practice, no source',
    grade: 'published',
    dissent:
      "car makers' own low-pressure fuel lines have them, and on boats 33 CFR 183.558(c) names them as one of three ways: go by the rule book at hand",
    overridable: true,
  },
];
