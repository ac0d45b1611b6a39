import { inchesToMm } from '../../base/units.ts';
import type { Rule } from './rule.ts';

const MIL = 'MIL-DTL-83796/5 Fig. 3 note 3: 3 degrees to 24 in, 5 above';
const ARMY = 'US Army TM 1-1500-204-23-2: 5 degrees to 36 in, 10 above';

function tolerance(id: string, title: string, value: number, source: string, dissent: string): Rule {
  return { id, title, value, unit: 'deg', source, grade: 'published', dissent, overridable: true };
}

/** How near the clock between two angled ends must come: two published answers, of which the project takes one. */
export const CLOCK_RULES: readonly Rule[] = [
  tolerance('clock-tolerance-short', 'Clock tolerance of an assembly up to 24 in', 3, MIL, ARMY),
  tolerance('clock-tolerance-long', 'Clock tolerance of an assembly over 24 in', 5, MIL, ARMY),
  tolerance('clock-tolerance-army-short', 'Clock tolerance of an assembly up to 36 in', 5, ARMY, MIL),
  tolerance('clock-tolerance-army-long', 'Clock tolerance of an assembly over 36 in', 10, ARMY, MIL),
];

/** mm. Assemblies longer than this take the wider clock tolerance: 24 in, printed as 61 cm (MIL-DTL-83796/5). */
export const CLOCK_LONG_ABOVE_MM = 610;
/** mm. The same of US Army TM 1-1500-204-23-2: 36 in. */
export const ARMY_CLOCK_LONG_ABOVE_MM = inchesToMm(36);

/**
 * Which clock tolerance holds for an assembly of this overall length, mm, by the published answer the project goes by
 * (`paperwork.clockTolerance`; absent = MIL-DTL-83796/5). The edge itself takes the closer one.
 */
export function clockToleranceRule(
  overallLengthMm: number,
  by: 'mil-dtl-83796' | 'army-tm' = 'mil-dtl-83796',
): 'clock-tolerance-short' | 'clock-tolerance-long' | 'clock-tolerance-army-short' | 'clock-tolerance-army-long' {
  if (by === 'army-tm')
    return overallLengthMm <= ARMY_CLOCK_LONG_ABOVE_MM ? 'clock-tolerance-army-short' : 'clock-tolerance-army-long';
  return overallLengthMm <= CLOCK_LONG_ABOVE_MM ? 'clock-tolerance-short' : 'clock-tolerance-long';
}
