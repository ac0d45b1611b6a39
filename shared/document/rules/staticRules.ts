import type { Rule } from './rule.ts';

/** Static charge of fuel running through an insulating bore. */
export const STATIC_RULES: readonly Rule[] = [
  {
    id: 'static-conductivity',
    title: 'Conductivity of a fluid under which a PTFE core must be conductive',
    value: 1e-7,
    unit: 'S/m',
    source: 'BS 5958-2:1991 19.3 as quoted at gaytri.com, anti-static PTFE hose; swagelok.com, static-dissipative hose',
    grade: 'published',
    overridable: false,
  },
];
