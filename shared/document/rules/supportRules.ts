import type { Rule } from './rule.ts';

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
];
