import { NO_SOURCE, type Rule } from './rule.ts';

/** Hoses tied together. */
export const BUNDLE_RULES: readonly Rule[] = [
  {
    id: 'bundle-pressure',
    title: 'Difference in working pressure between two hoses of a bundle',
    value: 1000,
    unit: 'kPa',
    source: `${NO_SOURCE} for the figure; that hoses of high and low pressure are not clamped together: ContiTech catalogue p. 330; Fluid Power (Goodheart-Willcox 2020) p. 200`,
    grade: 'common-practice',
    overridable: true,
  },
];
