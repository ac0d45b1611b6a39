import { NO_SOURCE, type Rule } from './rule.ts';

/** What must go over what when a hose is made up and threaded through. */
export const ASSEMBLY_RULES: readonly Rule[] = [
  {
    id: 'sleeve-goes-over',
    title: 'Inside of a sleeve over the outside of its hose, at least',
    value: 0,
    unit: 'mm',
    source: `${NO_SOURCE}: a sleeve that is narrower goes on only if it stretches`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'hole-over-hose',
    title: 'Hole of a pass-through over the outside of the hose, sleeve included, at least',
    value: 0,
    unit: 'mm',
    source: NO_SOURCE,
    grade: 'common-practice',
    overridable: false,
  },
  {
    id: 'hole-over-end',
    title: 'Hole of a pass-through over the slimmer end of the hose, at least',
    value: 0,
    unit: 'mm',
    source: `${NO_SOURCE}: a finished hose is threaded through by its slimmer end`,
    grade: 'common-practice',
    overridable: true,
  },
];
