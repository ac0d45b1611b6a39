import { NO_SOURCE, type Rule } from './rule.ts';

const SPEEDS = 'hytec-hydraulik.com, FAQ nominal width: suction 0.5 to 1.5, return 2 to 4, pressure 3 to 10 m/s';

/** What flows through a hose: how fast, and what that costs. */
export const FLOW_RULES: readonly Rule[] = [
  {
    id: 'flow-speed-suction',
    title: 'Flow speed in a suction hose',
    value: 1.5,
    unit: 'm/s',
    range: { low: 0.5, high: 1.5 },
    source: SPEEDS,
    grade: 'published',
    dissent: 'flodraulic.com, line sizing: 2 to 4 ft/s (0.6 to 1.2 m/s)',
    overridable: true,
  },
  {
    id: 'flow-speed-return',
    title: 'Flow speed in an oil hose back to the tank',
    value: 4,
    unit: 'm/s',
    range: { low: 2, high: 4 },
    source: SPEEDS,
    grade: 'published',
    dissent: 'flodraulic.com, line sizing: 10 to 15 ft/s (3.0 to 4.6 m/s)',
    overridable: true,
  },
  {
    id: 'flow-speed-pressure',
    title: 'Flow speed in an oil hose under pressure',
    value: 10,
    unit: 'm/s',
    range: { low: 3, high: 10 },
    source: SPEEDS,
    grade: 'published',
    dissent: 'flodraulic.com, line sizing: 15 to 25 ft/s (4.6 to 7.6 m/s) by pressure',
    overridable: true,
  },
  {
    id: 'suction-least-pressure',
    title: "Pressure at the pump's inlet, against the air's, at least",
    value: -20,
    unit: 'kPa',
    source: `${NO_SOURCE}; 0.2 bar below the air is what makers of gear pumps usually allow (from memory): go by the maker of the pump in hand`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'pressure-drop-share',
    title: 'Pressure lost in a hose over its working pressure, at most',
    value: 0.1,
    unit: 'ratio',
    source: NO_SOURCE,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'drain-capacity',
    title: 'What a drain carries half full, over what it has to',
    value: 2,
    unit: 'ratio',
    source: `${NO_SOURCE} for the figure; that oil leaves a turbo as froth and its drain must not run full: makers' drain pages (garrettmotion.com, bullseyepower.com)`,
    grade: 'common-practice',
    overridable: true,
  },
];
