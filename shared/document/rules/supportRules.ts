import { NO_SOURCE, type Rule } from './rule.ts';

/** Clamps. */
export const SUPPORT_RULES: readonly Rule[] = [
  {
    id: 'clamp-spacing',
    title: 'Longest stretch of hose without a clamp',
    value: 610,
    unit: 'mm',
    source: 'NAVEDTRA 14105 p. 5-11/5-12 and US Army AL0907 p. 59: 24 in or less, closer is better',
    grade: 'published',
    dissent:
      'a speedway rule book (New Zealand, 2010, p. 181): fuel lines every 300 mm; none needed on short hoses (NAVEDTRA 14105)',
    overridable: true,
  },
  {
    id: 'one-plane',
    title: 'How far a stretch that is to lie in one plane may lie off it',
    value: 5,
    unit: 'mm',
    source: `${NO_SOURCE} for the figure; bend in the plane of movement, clamp where the plane changes: US Army TM 1-1500-204-23-2 p. 4-66; bend in one plane between clamps: ContiTech catalogue p. 330`,
    grade: 'common-practice',
    overridable: true,
  },
];
