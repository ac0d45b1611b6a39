import { inchesToMm } from '../../base/units.ts';
import type { Rule } from './rule.ts';

/** Fuel lines and exhausts of boats. */
export const MARINE_RULES: readonly Rule[] = [
  {
    id: 'copper-off-aluminium',
    title: 'Brass or bronze straight on an aluminium fuel tank or its fitting plate',
    value: 0,
    unit: 'count',
    source:
      'ABYC 33.18.3.3.1, quoted at plasticclassicforum.com t=2411: copper alloys kept off aluminium tanks by a barrier such as 300 series stainless; the same: boats.com, "Keep aluminum and brass separated in the marine environment"',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'rigid-line-clamp',
    title: 'A rigid fuel line is first held from its joint with the hose within',
    value: inchesToMm(4),
    unit: 'mm',
    source: '33 CFR 183.562(b), petrol boats: attached to the structure within four inches of its flexible line',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'rigid-line-known',
    title: 'Rigid fuel lines of which it is stated where they are first held (1 = yes)',
    value: 1,
    unit: 'count',
    source: '33 CFR 183.562(b), petrol boats: attached to the structure within four inches of its flexible line',
    grade: 'published',
    overridable: true,
  },
];
