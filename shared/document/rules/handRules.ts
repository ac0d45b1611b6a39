import { NO_SOURCE, type Rule } from './rule.ts';

/** Room for hands and wrenches. */
export const HAND_RULES: readonly Rule[] = [
  {
    id: 'wrench-swing',
    title: 'Swing of a wrench at a nut, at least',
    value: 30,
    unit: 'deg',
    range: { low: 30, high: 60 },
    source: `${NO_SOURCE}: 30 degrees with 12 points or an open jaw that is turned over, 60 with 6 points`,
    grade: 'common-practice',
    dissent: '60 degrees for an open jaw that cannot be turned over',
    overridable: true,
  },
  {
    id: 'second-wrench',
    title: 'Places for a second wrench on what a nut is screwed on, at least',
    value: 1,
    unit: 'count',
    source: `${NO_SOURCE}: adapters turn with the nut unless they are held`,
    grade: 'common-practice',
    overridable: true,
  },
];
