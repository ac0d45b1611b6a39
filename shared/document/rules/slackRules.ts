import { NO_SOURCE, type Rule } from './rule.ts';

/** Slack and breathing: how much longer than taut a hose is laid, and how pressure changes its length. */
export const SLACK_RULES: readonly Rule[] = [
  {
    id: 'slack-wanted',
    title: 'Slack of a hose between fixed ends',
    value: 0.05,
    unit: 'ratio',
    range: { low: 0.05, high: 0.08 },
    source: 'NAVEDTRA 14105 p. 5-11/5-12 and FAA-H-8083-30 p. 7-19: 5 to 8 % of total length',
    grade: 'published',
    dissent: 'US Army AL0907 p. 63: at least 5 %, allowed when cutting; one hose vendor: 3 to 5 %',
    overridable: true,
  },
  {
    id: 'slack-least',
    title: 'Slack under which a hose is too tight to cut',
    value: 0.03,
    unit: 'ratio',
    source: `${NO_SOURCE}; the least that any source found allows is 3 % (a hose vendor)`,
    grade: 'common-practice',
    dissent: 'US Army AL0907 p. 63: at least 5 %',
    overridable: true,
  },
  {
    id: 'slack-most',
    title: 'Slack over which a hose is sloppy',
    value: 0.1,
    unit: 'ratio',
    source: `${NO_SOURCE}; the handbook band ends at 8 %`,
    grade: 'common-practice',
    dissent: 'NAVEDTRA 14105 p. 5-11/5-12: 5 to 8 %',
    overridable: true,
  },
  {
    id: 'breathing-longer',
    title: 'Growth of a hose under pressure',
    value: 0.02,
    unit: 'ratio',
    source: 'FAA AC 43.13-1B Fig. 9-9, p. 9-23: +2 % to -4 %',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'breathing-shorter',
    title: 'Shortening of a hose under pressure',
    value: -0.04,
    unit: 'ratio',
    source: 'FAA AC 43.13-1B Fig. 9-9, p. 9-23: +2 % to -4 %',
    grade: 'published',
    overridable: true,
  },
];
