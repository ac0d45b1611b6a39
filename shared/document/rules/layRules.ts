import { NO_SOURCE, type Rule } from './rule.ts';

/** Our own duty: nothing is cut from a lay that breaks its limits. */
export const LAY_RULES: readonly Rule[] = [
  {
    id: 'laid',
    title: 'Limits broken by a lay that is cut from',
    value: 0,
    unit: 'count',
    source: `${NO_SOURCE}: a hose is cut from a lay that meets bend radius and clearance`,
    grade: 'common-practice',
    overridable: false,
  },
  {
    id: 'end-room',
    title: 'Room round the ends themselves, at the collar',
    value: 0,
    unit: 'mm',
    source: `${NO_SOURCE}: an end that stands in the bay cannot be fitted`,
    grade: 'common-practice',
    overridable: true,
  },
];
