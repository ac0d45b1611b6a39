import type { Rule } from './rule.ts';

const NOTE_3 = 'MIL-DTL-83796/5 Fig. 3 note 3';
const DISSENT = 'US Army TM 1-1500-204-23-2: 5 degrees to 36 in, 10 degrees above';

/** How near the clock between two angled ends must come. */
export const CLOCK_RULES: readonly Rule[] = [
  {
    id: 'clock-tolerance-short',
    title: 'Clock tolerance of an assembly up to 24 in',
    value: 3,
    unit: 'deg',
    source: NOTE_3,
    grade: 'published',
    dissent: DISSENT,
    overridable: true,
  },
  {
    id: 'clock-tolerance-long',
    title: 'Clock tolerance of an assembly over 24 in',
    value: 5,
    unit: 'deg',
    source: NOTE_3,
    grade: 'published',
    dissent: DISSENT,
    overridable: true,
  },
];

/** mm. Assemblies longer than this take the wider clock tolerance: 24 in, printed as 61 cm (MIL-DTL-83796/5). */
export const CLOCK_LONG_ABOVE_MM = 610;

/** Which clock tolerance holds for an assembly of this overall length, mm: up to and with 610 mm the closer one. */
export function clockToleranceRule(overallLengthMm: number): 'clock-tolerance-short' | 'clock-tolerance-long' {
  return overallLengthMm <= CLOCK_LONG_ABOVE_MM ? 'clock-tolerance-short' : 'clock-tolerance-long';
}
